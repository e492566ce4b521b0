"""The values that the order of work is made of: steps, what they need, what comes first.

A step needs a machine set-up, an iron setting, both, or neither. `None` means that the step
leaves what it finds: hand work disturbs nothing. A state that is given is given whole, for a
half-stated set-up ("any thread") would make the price of a change depend on history.
"""

from __future__ import annotations

from dataclasses import dataclass, replace
from typing import Literal

from msgspec import Struct

Strength = Literal["must", "should", "may"]


@dataclass(frozen=True, slots=True, order=True)
class MachineState:
    """How one machine is set up; every field is an exact word, compared by equality.

    `size` is the needle size in NM (hundredths of a millimetre).
    """

    machine: str
    thread_above: str
    thread_below: str
    point: str
    size: int
    foot: str
    plate: str
    stitch: str
    tension: str

    def swinging(self) -> MachineState:
        """The set-up in zigzag: the needle would strike a straight-stitch foot and its plate."""
        foot = "standard" if self.foot == "straight-stitch" else self.foot
        return replace(self, foot=foot, plate="wide", stitch="304")


class IronState(Struct, frozen=True, order=True):
    """How the iron and board are set; the temperature is the sole plate's, in degrees Celsius."""

    temperature_c: int
    moisture: str
    surface: str


class Step(Struct, frozen=True):
    """One piece of work that is done in one go.

    `minutes` is the work itself, without changes of set-up. `rank` is the step's place in the
    customary sequence of the trade: it decides between orders that cost the same, and makes
    the plain order. It is a fact about the step, so the order of a file never matters.
    """

    id: str
    does: str = ""
    machine: MachineState | None = None
    iron: IronState | None = None
    minutes: float = 0.0
    rank: int = 0


class Precedence(Struct, frozen=True):
    """One reason why a step comes before another, with its sources and how strong it is."""

    before: str
    after: str
    why: str = ""
    sources: tuple[str, ...] = ()
    strength: Strength = "must"

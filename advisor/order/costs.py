"""What a change of set-up costs, in whole seconds.

The shipped weights are estimates of ours: no minutes for re-threading or changing a needle on
a household machine were found in print. Only the wait for an iron to cool has a source
(`trade-iron-wait`, at least five minutes before a lower setting is trusted). A maker may pass
her own table.

A price depends only on the state before and the state after. It is nothing for equal states,
it is not symmetric (an iron heats faster than it cools), and it obeys the triangle rule: no
detour over a third state is cheaper than the direct change, because every part of the price is
charged once whenever that part differs. The search rests on the triangle rule. Each machine
keeps its own set-up while another is used, and the iron keeps its setting while machines are
used; the first set-up of each is work that every order has, so it is not counted as a change.
Waiting for the iron is priced in full, though a maker may sew meanwhile.
"""

from __future__ import annotations

from msgspec import Struct
from msgspec.structs import asdict

from advisor.order.steps import IronState, MachineState

SECONDS = 60


class ChangedPart(Struct, frozen=True):
    """One thing that is changed between two states, and its price in seconds."""

    what: str
    seconds: int


class CostTable(Struct, frozen=True):
    """The price of each kind of change, in minutes; all defaults but `iron_cooler` are estimates.

    Raises ValueError for a price that is negative or not finite.
    """

    needle: float = 2.0
    thread: float = 2.0
    bobbin: float = 1.0
    foot: float = 1.0
    plate: float = 3.0
    tension: float = 3.0
    stitch: float = 0.0
    overlock_thread: float = 6.0
    other_machine: float = 0.5
    iron_hotter: float = 1.0
    iron_cooler: float = 5.0
    iron_moisture: float = 0.5
    iron_surface: float = 0.5
    overlockers: frozenset[str] = frozenset({"overlocker"})

    def __post_init__(self) -> None:
        for name, value in asdict(self).items():
            if name != "overlockers" and not 0 <= value < 1e6:
                raise ValueError(f"the price {name!r} must be from 0 up, not {value!r}")

    def machine_parts(self, old: MachineState, new: MachineState) -> tuple[ChangedPart, ...]:
        """What is changed on one machine between two of its set-ups.

        Raises ValueError when the states are of different machines: those do not disturb each
        other, and turning from one to the other is `turn_seconds`.
        """
        if old.machine != new.machine:
            raise ValueError(f"{old.machine!r} and {new.machine!r} keep their own set-ups")
        above = old.thread_above != new.thread_above
        below = old.thread_below != new.thread_below
        needle = (old.point, old.size) != (new.point, new.size)
        if new.machine in self.overlockers:
            threads = [("threads", above or below, self.overlock_thread)]
        else:
            threads = [("thread", above, self.thread), ("bobbin", below, self.bobbin)]
        return _parts(
            [
                *threads,
                ("needle", needle, self.needle),
                ("foot", old.foot != new.foot, self.foot),
                ("plate", old.plate != new.plate, self.plate),
                ("stitch", old.stitch != new.stitch, self.stitch),
                ("tension", old.tension != new.tension, self.tension),
            ]
        )

    def iron_parts(self, old: IronState, new: IronState) -> tuple[ChangedPart, ...]:
        """What is changed about the iron; cooling is dearer than heating (`trade-iron-wait`)."""
        return _parts(
            [
                ("hotter", new.temperature_c > old.temperature_c, self.iron_hotter),
                ("cooler", new.temperature_c < old.temperature_c, self.iron_cooler),
                ("moisture", old.moisture != new.moisture, self.iron_moisture),
                ("surface", old.surface != new.surface, self.iron_surface),
            ]
        )

    def machine_seconds(self, old: MachineState, new: MachineState) -> int:
        """The price in seconds of re-setting one machine; raises as `machine_parts` does."""
        return sum(part.seconds for part in self.machine_parts(old, new))

    def iron_seconds(self, old: IronState, new: IronState) -> int:
        """The price in seconds of re-setting the iron."""
        return sum(part.seconds for part in self.iron_parts(old, new))

    @property
    def turn_seconds(self) -> int:
        """The price in seconds of turning from one machine to another."""
        return _seconds(self.other_machine)


def _parts(rows: list[tuple[str, bool, float]]) -> tuple[ChangedPart, ...]:
    return tuple(ChangedPart(what, _seconds(minutes)) for what, differs, minutes in rows if differs)


def _seconds(minutes: float) -> int:
    # Whole seconds keep sums exact, so equal orders compare equal on every machine.
    return round(minutes * SECONDS)

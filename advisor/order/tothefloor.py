"""A close garment that reaches the floor: its length is taken on the body, in its shoes."""

from __future__ import annotations

from collections.abc import Callable
from typing import TYPE_CHECKING, Final

from advisor.order.fitting import TO_BODY
from advisor.order.untried import NOT

if TYPE_CHECKING:
    from advisor.order.facts import Facts

FROM_WAIST_MM: Final = 950.0
FROM_ABOVE_MM: Final = 1250.0
"""From this length on a seam runs to the floor, from the waist or from under the arm: estimate."""
LEGS: Final = frozenset({"inseam", "crotch"})
"""Roles of what has legs, whose length is no skirt's."""
DOWN: Final = frozenset({"side", "centre", "panel", "plain"})
HEM_BAND: Final = "hem-band"
WAIST, HEMS, SHELL, SEAM = "waist", ("hem", "raw-edge"), "shell", "seam"


def reaches_the_floor(facts: Facts) -> bool:
    """Whether a close garment has a hem at the floor, which heels lift and no hanger shows."""
    if facts.fitting.degree != TO_BODY or not any(
        p.role.last and p.kind.id in HEMS and p.unit == SHELL for p in facts.places
    ):
        return False
    roles = {p.role.id for p in facts.places}
    if roles & LEGS:
        return False
    waist = WAIST in roles
    long = FROM_WAIST_MM if waist else FROM_ABOVE_MM
    shell = (p for p in facts.places if p.kind.id == SEAM and p.unit == SHELL)
    return any(p.role.id in DOWN and p.seam.long_mm >= long for p in shell)


def bias_basted(facts: Facts) -> bool:
    """Whether bias seams are basted to be tried on, so that they hang out first."""
    loose = (p for p in facts.places if not p.full and facts.fitting.basted(p))
    return any(p.said("bias") == "yes" for p in loose)


def ends_in_a_band(facts: Facts) -> bool:
    """Whether a band of its own is joined below: what hangs down ends at that seam."""
    bands = (p for p in facts.places if p.role.id == HEM_BAND and p.kind.id == SEAM)
    return facts.fitting.degree != NOT and any(p.unit == SHELL for p in bands)


WHOLE: Final[dict[str, Callable[[Facts], bool]]] = {
    "bias basted": bias_basted,
    "reaches the floor": reaches_the_floor,
    "ends in a band": ends_in_a_band,
}
"""Facts of the whole garment that are told here."""

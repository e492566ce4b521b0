"""A close garment that reaches the floor: its length is taken on the body, in its shoes."""

from __future__ import annotations

from collections.abc import Callable
from typing import TYPE_CHECKING, Final

from advisor.order.easing import mostly_hair
from advisor.order.fitting import TO_BODY
from advisor.order.untried import NOT

if TYPE_CHECKING:
    from advisor.order.facts import Facts
    from advisor.order.kinds import SeamPlace

FROM_WAIST_MM: Final = 950.0
FROM_ABOVE_MM: Final = 1250.0
"""From this length on a seam runs to the floor, from the waist or from under the arm: estimate."""
LEGS: Final = frozenset({"inseam", "crotch"})
"""Roles of what has legs, whose length is no skirt's."""
DOWN: Final = frozenset({"side", "centre", "panel", "plain"})
LEG_MM: Final = 600.0
"""From this length on the inside of a leg ends at the shoe, and not at the knee: estimate."""
PILE, INSEAM, LINING = "pile", "inseam", "lining"
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


def legs_at_the_shoe(facts: Facts) -> bool:
    """Whether legs that are fitted end near the shoe at hems of their own, which heels lift."""
    if facts.fitting.degree != TO_BODY or not any(
        p.role.last and p.kind.id in HEMS and p.unit == SHELL for p in facts.places
    ):
        return False
    return any(p.seam.long_mm >= LEG_MM for p in _inseams(facts))


def legs_creased(facts: Facts) -> bool:
    """Whether such legs are of a smooth wool, which a damp press creases for long."""
    cloths = {p.cloths[0] for p in _inseams(facts)}
    entries = [facts.entry(name) for name in cloths]
    flat = all(e.structure == "woven" and e.weave != PILE for e in entries)
    wool = all(mostly_hair(facts.garment.cloths[name]) for name in cloths)
    return legs_at_the_shoe(facts) and flat and wool


def _inseams(facts: Facts) -> list[SeamPlace]:
    return [p for p in facts.places if p.role.id == INSEAM and p.unit != LINING]


WHOLE: Final[dict[str, Callable[[Facts], bool]]] = {
    "bias basted": bias_basted,
    "reaches the floor": reaches_the_floor,
    "ends in a band": ends_in_a_band,
    "legs end at the shoe": legs_at_the_shoe,
    "legs take a crease": legs_creased,
}
"""Facts of the whole garment that are told here."""

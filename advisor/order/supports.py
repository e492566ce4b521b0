"""A firm cloth that lies in a place or two behind another, and is basted to its piece there."""

from __future__ import annotations

from typing import TYPE_CHECKING, Final

from advisor.construction.canvassed import backed_pairs
from advisor.order.kinds import SeamPlace

if TYPE_CHECKING:
    from advisor.order.facts import Facts

STIFF, LEVEL = "stiffness", 3
"""The level of `stiffness` of a cloth that holds another: canvas (estimate)."""
BACKING: Final = "backing"
ARMHOLE: Final = "armhole"
OF_A_SLEEVE: Final = frozenset({"underarm", "sleeve-hem", "sleeve-piece", "cuff"})
"""Roles of what is sewn of a sleeve alone."""


def supports(place: SeamPlace, facts: Facts) -> tuple[str, ...]:
    """The firm cloths of a place that make nothing of their own, and so stiffen what they lie by.

    What is mounted behind whole pieces is basted to those at once, and what has a seam or an edge
    to itself is a cloth like any other.
    """
    own = place.cloths[1:] if place.unit != "lining" else ()
    return tuple(name for name in own if _firm(name, facts) and not _made_up(name, facts))


def _firm(name: str, facts: Facts) -> bool:
    entry = facts.entry(name)
    return entry.structure == "woven" and entry.traits.get(STIFF, (0, 0))[0] >= LEVEL


def _made_up(name: str, facts: Facts) -> bool:
    """Whether it is seen, joined to its own like, or held behind another all over."""
    entries = {n: facts.entry(n) for n in facts.garment.cloths}
    mine = [p for p in facts.places if name in p.cloths]
    first = any(p.cloths[0] == name for p in mine)
    held = any(p.kind.family == BACKING for p in mine)
    return (
        first
        or held
        or bool(facts.backs(name))
        or any(name in pair for pair in backed_pairs(facts.garment, entries))
    )


def stayed_alone(place: SeamPlace, facts: Facts) -> tuple[str, ...]:
    """The cloths whose edge is stay-stitched: what is basted behind another has none by itself.

    Nor is the head of a sleeve stayed, which has to ease.
    """
    stayed = facts.setups.stayed(place)
    return tuple(n for n in stayed if not (facts.backs(n) or _of_the_sleeve(n, place, facts)))


def _of_the_sleeve(name: str, armhole: SeamPlace, facts: Facts) -> bool:
    """Whether a cloth is sewn into an armhole as its sleeve, and is in no piece of the body."""
    beside = (p for p in facts.places if name in p.cloths and p.unit == armhole.unit)
    roles = {p.role.id for p in beside if p.name != armhole.name}
    return armhole.role.id == ARMHOLE and bool(roles) and roles <= OF_A_SLEEVE

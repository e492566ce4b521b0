"""The parts of a garment that are put on by themselves, as a petticoat under its dress."""

from __future__ import annotations

from collections.abc import Sequence
from typing import TYPE_CHECKING

from advisor.project.garment import Garment

if TYPE_CHECKING:
    from advisor.order.kinds import SeamPlace

FRILLS, WAIST = "gathered-edge", "waist"
"""What is drawn up on another cloth, but for a skirt: the same net on a sleeve joins no part."""


def parts_alone(garment: Garment, places: Sequence[SeamPlace]) -> frozenset[str]:
    """The parts that no place joins to another: their cloths meet nothing that lies outside them.

    One part alone is the garment, so nothing stands beside it.
    """
    if len(garment.parts) < 2:
        return frozenset()
    found = set()
    for part in garment.parts:
        inside = [p for p in places if p.seam.part == part.name]
        own = {cloth for p in inside for cloth in p.cloths}
        whole = own | set(part.layers)
        outside = [p for p in places if p not in inside]
        if own and not any(_joins(p, frozenset(whole)) for p in outside):
            found.add(part.name)
    return frozenset(found)


def _joins(place: SeamPlace, part: frozenset[str]) -> bool:
    """Whether a place holds a cloth of a part otherwise than as a frill of its own."""
    shared = part & set(place.cloths)
    drawn_up = place.kind.id == FRILLS and place.role.id != WAIST
    frilled = drawn_up and shared <= set(place.full)
    return bool(shared) and not frilled

"""The parts of a garment that are put on by themselves, as a petticoat under its dress."""

from __future__ import annotations

from collections.abc import Sequence
from typing import TYPE_CHECKING

from advisor.project.garment import Garment
from advisor.project.placing import singular_words

if TYPE_CHECKING:
    from advisor.order.kinds import SeamPlace

FRILLS, WAIST, BAND = "gathered-edge", "waist", "waistband"
"""What is drawn up on another cloth, but for a skirt: the same net on a sleeve joins no part. A
waistband is of its own part, whatever it is cut of."""
TROUSERS = "trousers"
ABOVE, BELOW = (
    frozenset({"jacket", "coat", "shirt", "tunic", "blouse"}),
    frozenset({"trouser", "pant", "short", "leg"}),
)
"""Words by which a place belongs to what is worn above, or to the trousers below it."""
LEGS, BANDS, WAIST_WORDS = (
    frozenset({"crotch", "inseam"}),
    frozenset({"casing", "waistband", "elastic-edge"}),
    frozenset({"waist", "waistband"}),
)
"""Roles and bands that only trousers have where what is worn above has none said of it."""


def parts_alone(garment: Garment, places: Sequence[SeamPlace]) -> frozenset[str]:
    """The parts that no place joins to another: what only they are made of meets nothing else.

    One part alone is the garment, so nothing stands beside it.
    """
    found = set()
    for part in garment.parts if len(garment.parts) > 1 else ():
        others = {c for other in garment.parts if other != part for c in other.layers}
        inside = [p for p in places if p.seam.part == part.name]
        own = ({cloth for p in inside for cloth in p.cloths} | set(part.layers)) - others
        outside = [p for p in places if p not in inside]
        met = any(_joins(p, own) for p in outside) or any(_mixes(p, own) for p in inside)
        if inside and own and not met:
            found.add(part.name)
    return frozenset(found)


def legs_alone(places: Sequence[SeamPlace]) -> frozenset[str]:
    """The places of trousers that are worn with a jacket and joined to it nowhere, as pyjamas are.

    Both are named, and no waist holds them together: a suit in one has its seam there.
    """
    words = {p.name: set(singular_words(p.name)) for p in places}
    above = any(ABOVE & said for said in words.values())
    if not above or any(p.role.id == WAIST for p in places):
        return frozenset()
    legs = {p.name for p in places if p.role.id in LEGS or BELOW & words[p.name]}
    bands = {p.name for p in places if p.kind.id in BANDS and WAIST_WORDS & words[p.name]}
    below = frozenset(legs | bands) if any(p.role.id in LEGS for p in places) else frozenset()
    return frozenset(name for name in below if not ABOVE & words[name])


def _joins(place: SeamPlace, own: set[str]) -> bool:
    """Whether a place holds a cloth of a part otherwise than as a frill of its own."""
    shared = own & set(place.cloths)
    drawn_up = place.kind.id == FRILLS and place.role.id != WAIST
    return bool(shared) and not (drawn_up and shared <= set(place.full))


def _mixes(place: SeamPlace, own: set[str]) -> bool:
    """Whether a place of a part joins it to the cloth of another."""
    cloths = set(place.cloths)
    return bool(own & cloths) and bool(cloths - own) and place.kind.id != BAND

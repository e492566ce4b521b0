"""Which cut edges no row of stay-stitching is wanted in: what is eased, and what a glue holds."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Final

from advisor.order.fusing import beside_glue
from advisor.order.kinds import SeamPlace
from advisor.project.garment import Garment, Seam
from advisor.project.headwords import the_words
from advisor.project.stands import SETTING

SETS_A_SLEEVE, ALONE = "armhole", frozenset({"collar", "stand"})
GLUED: Final = "fusible"
BAND: Final = "waistband"
OF_THE_BAND: Final = frozenset({BAND, "faced-edge", "inner-edge", "hook", "button", "buttonhole"})
"""Kinds of place where the piece of a band lies."""
SEWN: Final = frozenset({"seam", "yoke"})
"""Kinds of a seam along which a lining or a band may be sewn once more."""


def held_already(place: SeamPlace, kinds: Mapping[str, str]) -> frozenset[str]:
    """The cloths of a place of which no edge is stay-stitched.

    The head of a sleeve is to be eased in, and a piece that is fused all over gives no more.

    Args:
        place: where they lie.
        kinds: the kind of entry of every cloth of the garment.
    """
    uses = place.seam.uses
    if place.role.id == SETS_A_SLEEVE:
        flat = {use.cloth for use in uses if use.fullness <= 1.0}
        return (
            frozenset(use.cloth for use in uses if use.cloth not in flat) if flat else frozenset()
        )
    if not any(GLUED in kinds[use.cloth] for use in uses):
        return frozenset()
    if place.role.id in ALONE:
        return frozenset(place.cloths)
    names = [use.cloth for use in uses]
    fused = beside_glue(place.seam, kinds) if place.seam.placed_by == SETTING else []
    return frozenset(name for name in fused if names.count(name) > 1 and len(place.cloths) > 1)


def stayed_elsewhere(seam: Seam, garment: Garment) -> frozenset[str]:
    """The cloths of a place whose edge has its row at another, or is the straight piece of a band.

    A seam that lies whole in this one and is as long, with more layers here, has both of its edges
    stayed there.
    """
    here = set(seam.cloths())
    alike = (s for s in garment.seams if s.name != seam.name and s.place in SEWN)
    alike = (s for s in alike if _along(s, seam))
    curved = (s for s in alike if s.facts.get("shape") == "curved")
    sewn = [set(s.cloths()) for s in curved]
    found = {name for cloths in sewn if len(cloths) > 1 and cloths < here for name in cloths}
    if seam.place == BAND:
        found |= {name for name in here if _piece_of_a_band(name, garment)}
    return frozenset(found)


def _along(one: Seam, other: Seam) -> bool:
    """Whether two places lie on one line: as long, as far as is said, or of a word in common."""
    told = one.long_mm and other.long_mm and one.long_mm != other.long_mm
    shared = set(the_words(one.name)) & set(the_words(other.name)) - {"seam", "edge"}
    return not told or bool(shared)


def _piece_of_a_band(cloth: str, garment: Garment) -> bool:
    """Whether a cloth lies in a band alone, of which a straight piece is told."""
    places = [s.place for s in garment.seams if cloth in s.cloths()]
    pieces = [p for p in garment.plan.pieces if p.cloth == cloth]
    return bool(pieces) and all(p.grain != "bias" for p in pieces) and set(places) <= OF_THE_BAND

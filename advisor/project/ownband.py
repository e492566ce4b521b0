"""A part that is put on by itself though it is cut of the same cloth as another, as a skirt.

It holds to the body by a band of its own that opens beside it, and the other part ends in a hem
and closes by itself: what is sewn at a waist has neither.
"""

from __future__ import annotations

from typing import TYPE_CHECKING, Final

from advisor.knowledge import nouns
from advisor.project.placing import singular_words

if TYPE_CHECKING:
    from advisor.knowledge.model import Knowledge
    from advisor.project.garment import Garment, Seam

BAND: Final = "waistband"
FASTENING: Final = "fastening"
HEM: Final = "hem"
WAIST: Final = "waist"
TO: Final = "to"


def worn_by_band(garment: Garment, knowledge: Knowledge) -> frozenset[str]:
    """The parts with a band of their own, beside one other part that ends and closes by itself."""
    if len(garment.parts) != 2 or any(not seam.part for seam in garment.seams):
        return frozenset()
    if any(_joins_at_waist(seam) or _joined_by_name(seam, garment) for seam in garment.seams):
        return frozenset()
    if not _pieces_apart(garment):
        return frozenset()
    names = [part.name for part in garment.parts]
    inside = {name: [s for s in garment.seams if s.part == name] for name in names}
    bands = [n for n in names if any(s.place == BAND for s in inside[n])]
    if len(bands) != 1 or not all(_fastens(inside[n], knowledge) for n in names):
        return frozenset()
    rest = next(n for n in names if n not in bands)
    return frozenset(bands) if any(map(_ends, inside[rest])) else frozenset()


def _joins_at_waist(seam: Seam) -> bool:
    """Whether a seam or gathers are called after the waist, and may join a skirt there."""
    return seam.place in ("seam", "gathered-edge") and WAIST in singular_words(seam.name)


def _joined_by_name(seam: Seam, garment: Garment) -> bool:
    """Whether a place of one part is said to be sewn to the other: "band to skirt"."""
    words = singular_words(seam.name)
    end = words[words.index(TO) + 1 :] if TO in words else ()
    others = (singular_words(part.name) for part in garment.parts if part.name != seam.part)
    return any(end[-len(other) :] == other for other in others)


def _pieces_apart(garment: Garment) -> bool:
    """Whether no seam of one part is said to join a piece that a seam of another joins."""
    joins: dict[str, set[str]] = {}
    for seam in garment.seams:
        joins.setdefault(seam.part, set()).update(garment.wishes.joins.get(seam.name, ()))
    one, other = (joins.get(part.name, set()) for part in garment.parts)
    return one.isdisjoint(other)


def _fastens(seams: list[Seam], knowledge: Knowledge) -> bool:
    kinds = (knowledge.places.kinds.get(seam.place) for seam in seams)
    return any(kind is not None and kind.family == FASTENING for kind in kinds)


def _ends(seam: Seam) -> bool:
    """Whether it is the lower edge of the part, and not that of a sleeve."""
    words = singular_words(seam.name)
    return words[-1:] == (HEM,) and not nouns.ON_SLEEVE & set(words)

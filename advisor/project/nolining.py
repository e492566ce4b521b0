"""A cloth that is a lining by name or sort, and lines nothing: bags, bindings, facings of it.

A maker takes the lining that she has for pocket bags, bindings and the inside of a band. It hangs
in a garment only where a seam, an edge or a part of the garment says so.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from typing import Final

from advisor.knowledge import nouns
from advisor.knowledge.model import Entry
from advisor.project.garment import Garment, Seam
from advisor.project.headwords import the_words
from advisor.project.placing import POCKETS

BAND: Final = "waistband"
SMALL: Final = POCKETS | {"patch-pocket", "bound-edge", "inner-edge", BAND}
"""Kinds of place where such a cloth is a bag, a strip, or the inside of a band."""
FACED, FACING = "faced-edge", "facing"


def lines_nothing(garment: Garment) -> frozenset[str]:
    """The cloths that only make small things, by every place where they lie and every piece."""
    cloths = {name for seam in garment.seams for name in seam.cloths()}
    hung = {name for part in garment.parts for name in part.layers}
    return frozenset(n for n in cloths - hung if _small(n, garment))


def is_lining(name: str, entry: Entry) -> bool:
    """Whether a cloth is one to line with, by its sort or by what the project calls it."""
    return entry.family == "linings" or "lining" in the_words(name)


def lined_by(
    seam: Seam, entries: Mapping[str, Entry], garment: Garment, linings: frozenset[str]
) -> frozenset[str]:
    """The cloths of a place that line the garment; `linings` those that do, whatever their name."""
    named = {n for n in seam.cloths() if is_lining(n, entries[n]) or n in linings}
    return frozenset(named - lines_nothing(garment))


def _small(cloth: str, garment: Garment) -> bool:
    places = [seam for seam in garment.seams if cloth in seam.cloths()]
    pieces = [set(the_words(p.name)) for p in garment.plan.pieces if p.cloth == cloth]
    told = bool(pieces) and all(nouns.NO_LINING & words for words in pieces)
    if pieces and not told:
        return False
    return all(_of_small_things(s) for s in places) and (told or _beyond_a_band(places))


def _of_small_things(seam: Seam) -> bool:
    faced = seam.companion is not None or FACING in the_words(seam.name)
    return seam.place in SMALL or (seam.place == FACED and faced)


def _beyond_a_band(places: Sequence[Seam]) -> bool:
    """Whether it lies anywhere but in a waistband, which may take in a lining nobody describes."""
    return any(seam.place != BAND for seam in places)

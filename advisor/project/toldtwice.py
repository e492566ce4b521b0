"""A place told once more under another name: an edge and its binding, a canvas, gathers."""

from __future__ import annotations

from collections.abc import Iterable
from typing import Final

from advisor.knowledge import nouns
from advisor.project.garment import Seam
from advisor.project.headwords import the_words
from advisor.project.onewaist import FULL, GATHERS, as_long

BOUND: Final = "bound-edge"
PLAIN: Final = "seam"
CANVAS: Final = "canvas"
BANDS: Final = frozenset({"waistband", "cuff"})
"""Kinds of band that take in an edge which is drawn up."""
STRIP, EDGE, FACING, FRONT = "binding", "edge", "facing", "front"


def told_at(seam: Seam, seams: Iterable[Seam]) -> Seam | None:
    """The place at which all that this one asks for is done; None where it is one by itself."""
    words = the_words(seam.name)
    for other in seams:
        shared = set(seam.cloths()) & set(other.cloths())
        if (
            other is not seam
            and shared
            and (_binds(seam, words, other) or _backs(words, seam, other) or _draws_up(seam, other))
        ):
            return other
    return None


def _binds(edge: Seam, words: tuple[str, ...], other: Seam) -> bool:
    """Whether the other place binds the edge that is told here, and is called after it.

    What no word calls an edge is a seam, which may well be bound beside another place.
    """
    bare = edge.place == PLAIN and "layers" in edge.assumed and "edge" not in edge.facts
    if words[-1:] != (EDGE,) or other.place != BOUND or not (edge.place == BOUND or bare):
        return False
    called, line = the_words(other.name), set(words) - nouns.NOT_WHERE
    same = bool(line) and line == set(called) - nouns.NOT_WHERE and STRIP in called
    told = "length" in edge.facts and "length" in other.facts
    return same and (not told or as_long(edge, other))


def _backs(words: tuple[str, ...], seam: Seam, other: Seam) -> bool:
    """Whether a canvas is told for a facing beside that of the front, in which it lies."""
    both = seam.place == CANVAS == other.place and set(seam.cloths()) <= set(other.cloths())
    called = the_words(other.name)
    return both and FACING in words and FACING not in called and FRONT in called


def _draws_up(gathers: Seam, band: Seam) -> bool:
    """Whether a band says once more of what it takes in that all of it is drawn up to its length.

    An edge that is gathered to something flat is joined to that first, and is one by itself.
    """
    if gathers.place != GATHERS or band.place not in BANDS or "length" not in gathers.facts:
        return False
    full = {use.cloth: use.fullness for use in gathers.uses if use.fullness > FULL}
    taken_in = {use.cloth: use.fullness for use in band.uses if use.fullness > FULL}
    alone = len(full) == len(gathers.uses) and all(taken_in.get(c) == f for c, f in full.items())
    return alone and as_long(gathers, band)

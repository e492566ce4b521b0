"""Where a trimming lies that no piece is named for: round finished edges, or along a flat strip."""

from __future__ import annotations

from typing import Final

from advisor.knowledge import nouns
from advisor.order import namewords as called
from advisor.project.garment import Garment, Seam
from advisor.project.placing import singular_words

EDGE_TRIM: Final = "edge-trim"
ON_THE_FACE: Final = "applied"
HUNG: Final = frozenset({"hem-weight", "fringe", "feather-trim", "bead-trim"})
"""Trimmings that hang from an edge or weigh it down: they are sewn to what is finished."""
ON_A_STRIP: Final = "frill-hem"
"""The role of what is done to the edge of a strip while that is long and flat."""
FINISHED: Final = frozenset({"faced-edge", "bound-edge"})
"""Kinds of edges that are turned or bound, along which a trimming lies when that is done."""
ALIKE: Final = 0.05
"""By which share a trimming and the strip or edge that it lies along may differ: estimate."""


def trim_role(seam: Seam, garment: Garment) -> str:
    """The role of a trimming; "" of one that lies on its piece."""
    if _along_a_strip(seam, garment):
        return ON_A_STRIP
    words = set(singular_words(seam.name))
    ends = _round_the_edges(seam, words) or _at_a_hemmed_wrist(words, garment)
    ends = ends or _along_an_edge(seam, words, garment)
    return EDGE_TRIM if ends else ON_THE_FACE if _on_a_piece(seam, words, garment) else ""


def _on_a_piece(seam: Seam, words: set[str], garment: Garment) -> bool:
    """Whether a trimming is called after a part, or the hem, that other places make of its cloth.

    It is sewn to the piece while that lies flat: before a pocket is on, or a hem is turned up.
    """
    made = nouns.MADE_UP & words
    if any(garment.cloths[name].entry in HUNG for name in seam.cloths()):
        return False
    others = (o for o in garment.seams if o.name != seam.name and o.place != seam.place)
    beside = (o for o in others if set(o.cloths()) & set(seam.cloths()))
    return any(made & {*singular_words(other.name)} for other in beside)


def _along_a_strip(seam: Seam, garment: Garment) -> bool:
    """Whether it is as long as a strip is before that is drawn up, and called after its edge."""
    if not nouns.TRIMMED_ROUND & set(singular_words(seam.name)) or not seam.long_mm:
        return False
    strips = (
        other.long_mm * use.fullness
        for other in garment.seams
        for use in other.uses
        if use.cloth in seam.cloths() and use.fullness > called.GATHERED
    )
    return any(abs(long - seam.long_mm) <= ALIKE * seam.long_mm for long in strips)


def _round_the_edges(seam: Seam, words: set[str]) -> bool:
    """Whether a trimming is called after edges, or is too long to lie on one piece.

    One that names its piece is sewn to that, and several rows of it lie on the face.
    """
    long = seam.long_mm >= called.ROUND_MM and seam.making.times <= called.PAIR
    return bool(nouns.TRIMMED_ROUND & words) or (long and not nouns.TRIMMED & words)


def _along_an_edge(seam: Seam, words: set[str], garment: Garment) -> bool:
    """Whether it is as long as an edge of its cloth that a place finishes: it lies along that."""
    if nouns.TRIMMED & words or not seam.long_mm:
        return False
    edges = (
        e for e in garment.seams if e.place in FINISHED and e.making.times == seam.making.times
    )
    return any(
        set(e.cloths()) & set(seam.cloths()) and abs(e.long_mm - seam.long_mm) <= ALIKE * e.long_mm
        for e in edges
    )


def _at_a_hemmed_wrist(words: set[str], garment: Garment) -> bool:
    """Whether a trimming is called after the end of a sleeve, which a hem of its own finishes."""
    hems = (set(singular_words(seam.name)) for seam in garment.seams if seam.place == "hem")
    return bool(nouns.WRISTS & words) and any(nouns.ON_SLEEVE & hem for hem in hems)

"""Which cloths are cut on the bias, so that what is made of them hangs out before it is hemmed."""

from __future__ import annotations

from itertools import pairwise
from typing import Final

from msgspec.structs import replace

from advisor.knowledge import nouns
from advisor.project.garment import Garment, Seam
from advisor.project.headwords import speaks_of, the_words
from advisor.project.making import Piece

BIAS: Final = "bias"
HANGS: Final = frozenset({"seam", "hem"})
"""Kinds of places that drop with a cloth on the bias: its seams, and its lower edge."""
TIES: Final = "ties"
"""Made up of a strip, which gives with its bias when it is turned and worn."""
FACED: Final = "faced-edge"
"""Stretches with the piece that it ends, whatever it is faced with."""
HAND_MM: Final = 150.0
"""Up to this width a piece is a strip and hangs nowhere, mm: estimate."""


def hangs_on_the_bias(edge: Seam, garment: Garment) -> bool:
    """Whether a cloth of an edge is said to be on the bias, by its piece or by a seam of its own.

    A strip for a binding or a strap lies on the bias too, and is told by its piece all the same:
    what hangs is a piece that is wider than a hand.
    """
    cloths = set(edge.cloths())
    cut = any(
        p.grain == BIAS and p.cloth in cloths and not is_strip(p) for p in garment.plan.pieces
    )
    own = (s for s in garment.seams if set(s.cloths()) <= cloths)
    return cut or any(s.facts.get(BIAS) == "yes" for s in own)


def is_strip(piece: Piece) -> bool:
    """Whether a piece is a strip for a strap or a binding."""
    return min(piece.width, piece.height) <= HAND_MM


def said_on_bias(words: str) -> bool:
    """Whether her words for a cloth say that it is cut on the bias, and is no strip for an edge."""
    found = the_words(words)
    cut = any(pair in ((BIAS, "cut"), ("cut", BIAS), ("the", BIAS)) for pair in pairwise(found))
    return cut and not speaks_of(words, nouns.BINDS - {BIAS})


def with_bias(garment: Garment) -> Garment:
    """The garment, what joins and hems a cloth on the bias said to lie so where no place says it.

    A seam follows the pieces that are called as it is; where none is, all of its cloth.
    """
    return replace(garment, seams=tuple(_on_bias(seam, garment) for seam in garment.seams))


def _on_bias(seam: Seam, garment: Garment) -> Seam:
    if seam.place == TIES and BIAS not in seam.facts and _of_a_bias_strip(seam, garment):
        return replace(seam, facts={**seam.facts, BIAS: "yes"})
    outer = next(iter(seam.cloths()), "")
    faced = seam.place == FACED and BIAS not in seam.facts and outer in garment.cloths
    if faced and _cut_so(outer, seam, garment):
        return replace(seam, facts={**seam.facts, BIAS: "yes"})
    if seam.place not in HANGS or BIAS in seam.facts or speaks_of(seam.name, nouns.WAISTS):
        return seam
    cloths = [n for n in seam.cloths() if n in garment.cloths and not garment.cloths[n].put_in]
    if not cloths or not all(_cut_so(cloth, seam, garment) for cloth in cloths):
        return seam
    return replace(seam, facts={**seam.facts, BIAS: "yes"})


def _of_a_bias_strip(seam: Seam, garment: Garment) -> bool:
    """Whether every piece that a strap is called after, of its own cloths, is cut on the bias."""
    words, cloths = {*the_words(seam.name)}, set(seam.cloths())
    own = [p for p in garment.plan.pieces if p.cloth in cloths and {*the_words(p.name)} & words]
    return bool(own) and all(p.grain == BIAS for p in own)


def _cut_so(cloth: str, seam: Seam, garment: Garment) -> bool:
    """Whether the pieces of a cloth that a seam joins all lie on the bias."""
    pieces = [p for p in garment.plan.pieces if p.cloth == cloth and not is_strip(p)]
    own = (nouns.PIECES - nouns.HALVES) & {*the_words(seam.name)}
    called = [p for p in pieces if own & {*the_words(p.name)}]
    if not pieces:
        return garment.cloths[cloth].on_bias
    return all(piece.grain == BIAS for piece in called or pieces)

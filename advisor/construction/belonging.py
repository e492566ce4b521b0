"""Which piece of a cloth a place is of, told by what both are called.

One cloth makes sleeves and skirt alike, so a piece is held against a place that is called after
the same part, and never against one that is called after another. What a name leaves open counts
as before.
"""

from __future__ import annotations

from collections.abc import Iterator
from typing import Final

from advisor.knowledge import nouns
from advisor.project.garment import Garment, Seam
from advisor.project.making import Piece
from advisor.project.placing import singular_words

PARTS: Final = (nouns.OF_A_SLEEVE, nouns.OF_A_SKIRT)
TALLER, CAP_MM = 2.5, 300.0
"""A piece reaches past its seam by its cap, its flare and its hem, never so far: estimate."""


def _parts_of(name: str) -> set[int]:
    words = set(singular_words(name))
    return {i for i, part in enumerate(PARTS) if words & part}


def may_belong(piece: Piece, seam: Seam, garment: Garment) -> bool:
    """Whether a piece may be what a place takes in, by their names and those of its fellows."""
    place, fellows = (
        _parts_of(seam.name),
        [p for p in garment.plan.pieces if p.cloth == piece.cloth],
    )
    if not place:
        named = half_of(seam, fellows)  # a back into its yoke is none of the skirt
        return not named or piece in named
    mine = _parts_of(piece.name)
    if mine:
        return bool(mine & place)
    return not any(_parts_of(other.name) & place for other in fellows)


def half_of(seam: Seam, pieces: list[Piece]) -> list[Piece]:
    """Of some pieces those of the half that a place names; all where it names none."""
    half = nouns.QUARTERS & set(singular_words(seam.name))
    return [p for p in pieces if half <= set(singular_words(p.name))] if half else pieces


def namesakes(seam: Seam, pieces: list[Piece]) -> list[Piece]:
    """Of some pieces those that are called after the same part by the same word."""
    parts = frozenset[str]().union(*PARTS) & set(singular_words(seam.name))
    return [p for p in pieces if parts & set(singular_words(p.name))]


def too_tall(garment: Garment) -> Iterator[tuple[Seam, Piece]]:
    """Pieces of which the height cannot be that of the seam that runs down them."""
    for seam in garment.seams:
        words, length = singular_words(seam.name), seam.facts.get("length")
        if length is None or seam.place != "seam" or not nouns.CLOSING & set(words[-1:]):
            continue
        for piece in _down_along(words, seam, garment):
            if piece.height > TALLER * float(length) + CAP_MM:
                yield seam, piece


def _down_along(words: tuple[str, ...], seam: Seam, garment: Garment) -> list[Piece]:
    """The only piece that is called after the part whose seam it is."""
    after = nouns.RUNS_DOWN & set(words)
    found = [
        p
        for p in garment.plan.pieces
        if p.cloth in seam.cloths() and after & set(singular_words(p.name)[-1:])
    ]
    plain = (p for p in found if p.grain == "lengthwise" and p.tiers is None and p.flounce is None)
    return list(plain) if len(found) == 1 else []

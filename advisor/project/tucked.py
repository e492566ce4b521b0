"""Tucks that a project says twice: as a place, and of the piece that they are stitched on."""

from __future__ import annotations

from advisor.knowledge import nouns
from advisor.project.garment import Garment, Seam
from advisor.project.headwords import the_words
from advisor.project.making import Piece


def tucks_on_a_piece(seam: Seam, garment: Garment) -> Piece | None:
    """The piece whose own tucks these are: of its cloth, and as many, or called after it."""
    words = {*the_words(seam.name)}
    if not words & nouns.TUCKS:
        return None
    for piece in garment.plan.pieces:
        if piece.tucks is None or piece.cloth not in seam.cloths():
            continue
        many = piece.tucks.number * (piece.number or 1)
        alike = (words - nouns.TUCKS) & {*the_words(piece.name)}
        if alike or many == seam.making.times:
            return piece
    return None

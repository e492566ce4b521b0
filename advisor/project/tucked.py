"""Tucks that a project says twice: as a place, and of the piece that they are stitched on."""

from __future__ import annotations

from advisor.knowledge.places import plain_word
from advisor.project.garment import Garment, Seam
from advisor.project.making import Piece

TUCKS = frozenset({"tuck", "tucks", "pintuck", "pintucks"})


def tucks_on_a_piece(seam: Seam, garment: Garment) -> Piece | None:
    """The piece whose own tucks these are: of its cloth, and as many, or called after it."""
    words = set(plain_word(seam.name).split())
    if not words & TUCKS:
        return None
    for piece in garment.plan.pieces:
        if piece.tucks is None or piece.cloth not in seam.cloths():
            continue
        many = piece.tucks.number * (piece.number or 1)
        alike = (words - TUCKS) & set(plain_word(piece.name).split())
        if alike or many == seam.making.times:
            return piece
    return None

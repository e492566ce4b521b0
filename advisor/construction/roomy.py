"""Pieces that are quilted before they are cut to their pattern: they are cut roomy, and bought so.

Quilting draws a piece in by some hundredths either way (common practice), and the edges of the
layers shift while the rows are sewn.
"""

from __future__ import annotations

from typing import Final

from msgspec.structs import replace

from advisor.construction.belonging import half_of
from advisor.construction.cleared import QUILTING
from advisor.project.garment import Garment
from advisor.project.making import Piece
from advisor.units.sentences import said

ROOM: Final = 30.0
"""What each edge is cut larger, mm (estimate) ..."""
DRAWN_IN: Final = 0.05
"""... or half of what the rows draw in, a share of the whole, where that is more (estimate)."""


def roomy(piece: Piece, garment: Garment) -> Piece:
    """A piece with what it is cut larger for quilting; as it is where it is not quilted."""
    if not _quilted(piece, garment):
        return piece
    wide, high = (size + max(2 * ROOM, DRAWN_IN * size) for size in (piece.width, piece.height))
    return replace(piece, width=wide, height=high)


def room_words(cloth: str, garment: Garment) -> str:
    """What is told where a cloth is cut of which pieces are quilted; "" of any other."""
    ours = [p for p in garment.plan.pieces if p.cloth == cloth]
    held = [p for p in ours if _quilted(p, garment)]
    if not held:
        return ""
    names = "" if len(held) == len(ours) else " and ".join(p.name for p in held) + " "
    return f"{names}{said(ROOM / 10, 'cm', garment.units)} larger all round, to be quilted"


def _quilted(piece: Piece, garment: Garment) -> bool:
    """Whether a piece lies in a quilting: with one of its size of another layer, where any is said.

    A strip on the bias binds or pipes; what is tucked, gathered or ringed is no quilt.
    """
    shaped = piece.tucks or piece.flounce or piece.tiers or piece.fullness > 1
    if shaped or piece.grain == "bias":
        return False
    for seam in garment.seams:
        others = set(seam.cloths()) - {piece.cloth}
        if seam.place != QUILTING or piece.cloth not in seam.cloths():
            continue
        if piece not in half_of(seam, [p for p in garment.plan.pieces if p.cloth == piece.cloth]):
            continue
        behind = [p for p in garment.plan.pieces if p.cloth in others]
        sizes = {(p.width, p.height) for p in behind}
        if not behind or (piece.width, piece.height) in sizes:
            return True
    return False

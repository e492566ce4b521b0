"""Which cloths are cut on the bias, so that what is made of them hangs out before it is hemmed."""

from __future__ import annotations

from typing import Final

from advisor.project.garment import Garment, Seam
from advisor.project.making import Piece

BIAS: Final = "bias"
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

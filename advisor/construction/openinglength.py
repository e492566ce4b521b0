"""A slit that is longer than the piece it is cut into: the opening runs on through a seam."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Final

from advisor.construction.disagreement import Disagreement, Figure
from advisor.knowledge import nouns
from advisor.project.garment import Garment
from advisor.project.placing import singular_words

PLACKET: Final = "placket"


def slit_past_its_piece(garment: Garment) -> Iterator[Disagreement]:
    """The length of a placket against the highest piece that it is called after."""
    for seam in garment.seams:
        length = seam.long_mm
        where = (nouns.HALVES | {"sleeve"}) & set(singular_words(seam.name))
        into = [
            piece
            for piece in garment.plan.pieces
            if piece.cloth in seam.cloths() and where & set(singular_words(piece.name))
        ]
        highest = max(into, key=lambda piece: piece.height, default=None)
        if seam.place == PLACKET and highest is not None and length > highest.height > 0:
            said = Figure(f"{seam.name} is said to be", length)
            high = Figure(f"the piece {highest.name} is high", highest.height)
            yield Disagreement("slit", seam.name, (said, high))

"""A waistband or a cuff that is said twice, as a place and as its piece, and not alike.

A piece may be longer by the lap that its ends lie on each other, never by a hand, and shorter only
where it is stretched to its edge.
"""

from __future__ import annotations

from collections.abc import Iterator
from typing import Final

from advisor.construction.bands import CLOSED, UNDERLAP, gives
from advisor.construction.disagreement import Disagreement, Figure
from advisor.knowledge.model import Knowledge
from advisor.project.garment import Garment, Seam
from advisor.project.making import Piece

OFF: Final = 10.0
"""What a band may be off, mm: nobody measures a round closer (estimate)."""
LAP: Final = UNDERLAP[1] + OFF
"""The most that it is longer than its edge, mm."""


def unlike_its_band(garment: Garment, knowledge: Knowledge) -> Iterator[Disagreement]:
    """Bands whose piece is of another length than their place, with both lengths."""
    for seam in garment.seams:
        length = seam.facts.get("length")
        if seam.place not in CLOSED or length is None or _drawn(seam, garment, knowledge):
            continue
        for piece in garment.plan.pieces:
            if piece.name.casefold() != seam.name.casefold() or piece.cloth not in seam.cloths():
                continue
            over = _finished(piece) - float(length)
            short = over < -OFF and piece.number == seam.making.times
            if (over > LAP or short) and not (piece.narrow or piece.fullness > 1 or piece.tucks):
                said = Figure(f"{seam.name} is said to be", float(length))
                has = Figure("its piece is, seams off,", _finished(piece))
                yield Disagreement("band", seam.name, (said, has), cloth=piece.cloth)


def _drawn(seam: Seam, garment: Garment, knowledge: Knowledge) -> bool:
    """Whether some layer there is stretched or eased, or is of a cloth that gives."""
    entries = [knowledge.entries[garment.cloths[name].entry] for name in seam.cloths()]
    full = any(use.stretched > 1 or use.fullness > 1 or use.body for use in seam.uses)
    return full or any(entry.structure == "knit" or gives(entry) for entry in entries)


def _finished(piece: Piece) -> float:
    """How long a band is, mm, without the allowances of its ends."""
    return max(piece.width, piece.height) - (2 * piece.allowance if piece.cut else 0.0)

"""Whether the lining of a sleeved garment is cut narrower across the back than its shell.

The lining is the thinner cloth and gives less, and every reach of the arms pulls on it, so it has a
fold there (common practice). A skirt is left out: its lining may well be the narrower.
"""

from __future__ import annotations

from collections.abc import Iterator
from typing import Final

from advisor.construction.disagreement import Disagreement, Figure
from advisor.knowledge import nouns
from advisor.knowledge.model import Knowledge
from advisor.project.garment import Garment
from advisor.project.headwords import speaks_of
from advisor.project.making import Piece
from advisor.project.placing import singular_words

BACK, LINING = "back", "lining"
SLACK: Final = 5.0
"""A difference that is no more than the cutting, mm: estimate."""


def tight_across(garment: Garment, knowledge: Knowledge) -> Iterator[Disagreement]:
    """The back of a woven lining against that of the shell, where it is no wider."""
    if not any(speaks_of(seam.name, nouns.SLEEVE_HEAD) for seam in garment.seams):
        return
    backs = [p for p in garment.plan.pieces if BACK in singular_words(p.name) and p.fullness <= 1]
    for piece in backs:
        entry = knowledge.entries[garment.cloths[piece.cloth].entry]
        shell = _shell(piece, backs)
        if LINING not in singular_words(piece.name) or entry.structure != "woven" or shell is None:
            continue
        if piece.width * (piece.number or 1) < shell.width * (shell.number or 1) - SLACK:
            figures = (
                Figure(f"the piece {shell.name} is wide", shell.width),
                Figure(f"the piece {piece.name}", piece.width),
            )
            yield Disagreement("lining ease", piece.name, figures, cloth=piece.cloth)


def _shell(lining: Piece, backs: list[Piece]) -> Piece | None:
    """The piece that is called like that of the lining, without the word."""
    plain = set(singular_words(lining.name)) - {LINING}
    same = (p for p in backs if set(singular_words(p.name)) == plain and p.cloth != lining.cloth)
    return next((p for p in same if (p.number or 1) == (lining.number or 1)), None)

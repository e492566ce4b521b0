"""How wide a bias strip is cut that covers a cord, both its edges caught in a seam."""

from __future__ import annotations

import math
from collections.abc import Iterator
from typing import Final

from advisor.claims.collect import Place
from advisor.claims.judgement import Judgement
from advisor.construction.disagreement import Disagreement, Figure
from advisor.construction.finishing import allowance_of
from advisor.construction.widths import width_of
from advisor.knowledge import nouns
from advisor.knowledge.model import Knowledge
from advisor.project.headwords import speaks_of
from advisor.project.making import Piece

CORD: Final = "piping-cord"
NEAR: Final = 2.0
"""A cut that misses by no more than this is none, mm (estimate)."""


def too_narrow_for_its_cord(judgement: Judgement, knowledge: Knowledge) -> Iterator[Disagreement]:
    """A strip that is cut narrower than the cord and two allowances of its place take."""
    needs = sorted(_needs(judgement, knowledge), reverse=True)
    for piece in judgement.garment.plan.pieces:
        need = next(((most, name) for most, name, cloth in needs if cloth == piece.cloth), None)
        if need is None or not _covers(piece):
            continue
        most, place = need
        cut = min(piece.width, piece.height)
        if cut < most - NEAR:
            has = Figure(f"the piece {piece.name} is cut", cut)
            takes = Figure(f"round the cord and with both allowances {place} takes", most)
            yield Disagreement("piping strip", place, (has, takes), cloth=piece.cloth)


def _needs(judgement: Judgement, knowledge: Knowledge) -> Iterator[tuple[float, str, str]]:
    """What each piped place takes of a strip, mm, with its name and each of its cloths."""
    garment = judgement.garment
    for seam in garment.seams:
        entries = {n: knowledge.entries[garment.cloths[n].entry] for n in seam.cloths()}
        cord = next((n for n, entry in entries.items() if entry.id == CORD), "")
        wide = width_of(cord, seam, entries[cord], garment) if cord else None
        allowance = allowance_of(seam, judgement.verdicts[Place("seam", seam.name)])
        if wide is None or wide.mm is None or not allowance:
            continue
        most = 2 * allowance + math.pi * wide.mm
        yield from ((most, seam.name, n) for n, e in entries.items() if e.kind == "cloth")


def _covers(piece: Piece) -> bool:
    return piece.cut and piece.grain == "bias" and speaks_of(piece.name, nouns.COVERS)

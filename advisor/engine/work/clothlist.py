"""How much of each cloth to buy: pieces to cut sizes, then a strip-packing estimate.

From finished to cut sizes by `craft.fullness`; packing by `craft.cloth`, which says that it is an
estimate. Width and shrinkage are taken as usual where nobody says them (estimates), and that
is said.
"""

from __future__ import annotations

import math
from dataclasses import dataclass
from typing import Final

from advisor.craft import cloth as lay
from advisor.craft.checks import up
from advisor.craft.fullness import cut_length, panels
from advisor.engine.claims import Place
from advisor.engine.judge import Judgement
from advisor.engine.subjects import subject_of
from advisor.engine.work.bulk import picked
from advisor.knowledge.model import Knowledge
from advisor.project.garment import Cloth
from advisor.project.making import Bolt, Piece

USUAL_WIDTH: Final = 1400.0
"""Width of a cloth of which nobody says it, mm (estimate)."""
INTERFACING_WIDTH: Final = 900.0
SHRINKS: Final = (0.0, 0.02, 0.04, 0.07)
"""What a cloth shrinks by the level of its trait, a share (estimate); much is over 5 %."""
BIAS: Final = math.sqrt(2)


@dataclass(frozen=True, slots=True)
class Bought:
    """Cloth to buy, in mm; `wrong` says why there is no figure."""

    cloth: str
    width: float
    length: float | None
    buy_metric: float | None
    buy_us: float | None
    shrinks: float
    one_way: bool
    pieces: int
    used: float | None
    assumed: tuple[str, ...]
    wrong: str = ""
    sources: tuple[str, ...] = lay.SOURCES


def cloths_to_buy(judgement: Judgement, knowledge: Knowledge) -> list[Bought]:
    """Every cloth that the project gives pieces for, in the order of its cloths."""
    garment = judgement.garment
    return [
        _bought(cloth, [p for p in garment.plan.pieces if p.cloth == name], judgement, knowledge)
        for name, cloth in garment.cloths.items()
        if any(piece.cloth == name for piece in garment.plan.pieces)
    ]


def _bought(
    cloth: Cloth, pieces: list[Piece], judgement: Judgement, knowledge: Knowledge
) -> Bought:  # fmt: skip
    garment = judgement.garment
    bolt = garment.plan.bolts.get(cloth.name, Bolt())
    assumed = []
    width = bolt.width
    if width is None:
        kind = knowledge.entries[cloth.entry].kind
        width = USUAL_WIDTH if kind == "cloth" else INTERFACING_WIDTH
        assumed.append("width")
    shrinks = bolt.shrinks
    if shrinks is None:
        shrinks = usual_shrinkage(cloth, knowledge)
        assumed.append("shrinkage")
    one_way = _one_way(cloth, judgement, knowledge)
    sold = lay.Cloth(width, one_way, bolt.repeat, bolt.selvage, shrinks)
    try:
        cut = [as_cut(piece, sold) for piece in pieces]
        found = lay.estimate(cut, sold)
    except ValueError as error:
        return Bought(cloth.name, width, None, None, None, shrinks, one_way, len(pieces), None,
                      tuple(assumed), str(error))  # fmt: skip
    return Bought(
        cloth.name, width, found.length_mm, found.buy_metric_mm, found.buy_us_mm, shrinks,
        one_way, sum(p.number or c.count for p, c in zip(pieces, cut, strict=True)), found.used,
        tuple(assumed),
    )  # fmt: skip


def usual_shrinkage(cloth: Cloth, knowledge: Knowledge) -> float:
    """What a cloth of this kind shrinks, a share; the worse where nobody can say."""
    level = subject_of(cloth, None, knowledge).levels.get("shrinks", (0, 0))[1]
    return SHRINKS[min(level, len(SHRINKS) - 1)]


def _one_way(cloth: Cloth, judgement: Judgement, knowledge: Knowledge) -> bool:
    """Whether all pieces lie the same way up: by the verdict on direction, else by the trait."""
    verdicts = judgement.verdicts.get(Place("fabric", cloth.name), {})
    direction = picked(verdicts, "cut.direction")
    if direction:
        return direction.startswith("one way")
    return subject_of(cloth, None, knowledge).levels.get("one way", (0, 0))[1] > 0


def as_cut(piece: Piece, sold: lay.Cloth) -> lay.Piece:
    """A piece as it lies on the cloth, seams, hem and fullness counted; shrinkage is not.

    Raises:
        ValueError: it is wider than the cloth.
    """
    wide, high, number = piece.width, piece.height, piece.number or 1
    if not piece.cut:
        high = cut_length(piece.height, piece.hem, piece.allowance)
        if piece.fullness > 1:
            row = panels(piece.width, piece.fullness, sold.usable_mm, piece.allowance, piece.number)
            wide, number = row.panel_width, row.number
        else:
            wide += 2 * piece.allowance
    if piece.grain == "crosswise":
        wide, high = high, wide
    elif piece.grain == "bias":
        # A strip on the bias fills a square of its diagonal reach, or of the cloth's width.
        wide = high = min(sold.usable_mm, (wide + high) / BIAS)
        return lay.Piece(wide, _bias_length(piece, sold, number), 1)
    return lay.Piece(wide, high, number, piece.grain == "any", piece.narrow, piece.matched)


def _bias_length(piece: Piece, sold: lay.Cloth, number: int) -> float:
    """Cloth along the selvage for bias pieces: their area plus the corner that bias wastes."""
    side = min(sold.usable_mm, (piece.width + piece.height) / BIAS)
    area = piece.width * piece.height * number
    return max(side, up(area / side + side / 2))

"""How much of each cloth to buy: pieces to cut sizes, then a strip-packing estimate.

Cut sizes are those of `cutting`; packing by `craft.cloth`, which says that it is an estimate.
Width and shrinkage are taken as usual where nobody says them (estimates), and that is said.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import Final

from advisor.claims.collect import Place
from advisor.claims.judgement import Judgement
from advisor.claims.subjects import subject_of
from advisor.construction.bulk import picked
from advisor.construction.cutting import Cut, cuts_of, on_cloth
from advisor.craft import cloth as lay
from advisor.knowledge.model import Knowledge
from advisor.project.garment import Cloth
from advisor.project.making import Bolt, Piece

USUAL_WIDTH: Final = 1400.0
"""Width of a cloth of which nobody says it, mm (estimate)."""
INTERFACING_WIDTH: Final = 900.0
SHRINKS: Final = (0.0, 0.02, 0.04, 0.07)
"""What a cloth shrinks by the level of its trait, a share (estimate); much is over 5 %."""


@dataclass(frozen=True, slots=True)
class Bought:
    """Cloth to buy, in mm, and what is cut from it; `wrong` says why there is no figure."""

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
    cuts: tuple[Cut, ...] = ()
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
) -> Bought:
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
        cut = [cut for piece in pieces for cut in cuts_of(piece, sold.usable_mm)]
        found = lay.estimate([on_cloth(each, sold.usable_mm) for each in cut], sold)
    except ValueError as error:
        return Bought(
            cloth.name,
            width,
            None,
            None,
            None,
            shrinks,
            one_way,
            len(pieces),
            None,
            tuple(assumed),
            str(error),
        )
    return Bought(
        cloth.name,
        width,
        found.length_mm,
        found.buy_metric_mm,
        found.buy_us_mm,
        shrinks,
        one_way,
        sum(each.number for each in cut),
        found.used,
        tuple(assumed),
        cuts=tuple(cut),
    )


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

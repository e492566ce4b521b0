"""A cloth is cut singly where a piece is wider than half of it: the fold would cut it in two."""

from __future__ import annotations

from typing import Final

from advisor.claims.collect import Place
from advisor.claims.combine import Verdict, narrowed
from advisor.claims.valuesets import Choice
from advisor.project.garment import Garment
from advisor.project.making import Piece

LAY: Final = "cut.lay"
FOLDED: Final = "folded"
ALONG: Final = "lengthwise"
WHY: Final = "{} is wider than half of the cloth, so that no fold holds it."


def cut_singly(garment: Garment, verdicts: dict[Place, dict[str, Verdict]]) -> None:
    """Leave out the lay on the fold for every cloth that has a piece no fold can hold."""
    for name in garment.cloths:
        bolt, place = garment.plan.bolts.get(name), Place("fabric", name)
        lay = verdicts.get(place, {}).get(LAY)
        if bolt is None or bolt.usable is None or lay is None:
            continue
        half = bolt.usable / 2
        wide = [p for p in garment.plan.pieces if p.cloth == name and _across(p) > half]
        single = [word for word in lay.aspect.words if not word.startswith(FOLDED)]
        left = [lay.aspect.words.index(word) for word in single]
        if wide and isinstance(lay.allowed, Choice) and any(i in lay.allowed for i in left):
            verdicts[place][LAY] = narrowed(lay, single, WHY.format(wide[0].name.capitalize()))


def _across(piece: Piece) -> float:
    """How far a piece surely reaches across the cloth, mm; 0 where it may be turned or pieced."""
    plain = piece.cut and not (piece.joined or piece.tiers or piece.flounce or piece.tucks)
    return piece.width if plain and piece.grain == ALONG and piece.fullness <= 1 else 0.0

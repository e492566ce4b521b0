"""The allowance that the finish of a seam's edges needs, where nobody fixed another.

Allowance and finish are picked each by itself, and an edge turned under or bound takes more than
the least that its cloths ask. What the finish needs is picked, as far as it is advised; where that
is too little, or the maker has cut already, the finish is told to be short of room.
"""

from __future__ import annotations

from typing import Final

from advisor.claims.collect import Place
from advisor.claims.combine import Verdict, picking_number
from advisor.claims.valuesets import Span
from advisor.construction.bulk import picked
from advisor.construction.finishing import finish_of
from advisor.craft.allowance import Finish, fit, need
from advisor.project.garment import Garment

ALLOWANCE: Final = "seam.allowance"
WHY: Final = "The finish of its edges takes so much."


def give_room(garment: Garment, verdicts: dict[Place, dict[str, Verdict]]) -> None:
    """Pick for every seam that is not cut yet an allowance with room for its finish."""
    for seam in garment.seams:
        by_aspect = verdicts[Place("seam", seam.name)]
        verdict = by_aspect.get(ALLOWANCE)
        kind, word = picked(by_aspect, "seam.kind"), picked(by_aspect, "seam.finish")
        finish = finish_of(kind, word, garment.maker.overlocker)
        if "allowance" in seam.facts or verdict is None or finish is None:
            continue
        wide = _wide_enough(verdict, finish)
        if wide is not None:
            by_aspect[ALLOWANCE] = picking_number(verdict, wide, WHY)


def _wide_enough(verdict: Verdict, finish: Finish) -> float | None:
    """The least advised allowance, mm, that a finish fits; None where the pick will do."""
    if verdict.pick is None or fit(finish, verdict.pick).fits:
        return None
    able = [mm for mm in (verdict.aspect.usual, need(finish)) if mm is not None]
    advised = verdict.advised
    return min(
        (mm for mm in able if fit(finish, mm).fits and isinstance(advised, Span) and mm in advised),
        default=None,
    )

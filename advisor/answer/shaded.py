"""One number for one iron: where the order sets it a shade cooler, the sheet says so too."""

from __future__ import annotations

from typing import TYPE_CHECKING

from msgspec.structs import replace

from advisor.claims.collect import Place
from advisor.claims.combine import HERE, decide
from advisor.claims.speakers import Said
from advisor.claims.valuesets import Span
from advisor.craft.irondial import ROUNDING
from advisor.knowledge.model import COLD, LIMIT_ASPECT, Claim

if TYPE_CHECKING:
    from advisor.claims.judgement import Advice
    from advisor.order.work import Work

PRESSINGS = ("press", "turn")
WHY = "What lies beside it bears no more."


def as_ordered(advice: Advice, work: Work) -> Advice:
    """The advice with the limit of the order where only a rounding parts the two."""
    verdicts = dict(advice.judgement.verdicts)
    for task in work.tasks.values():
        place = Place("seam", task.place.name) if task.place else None
        if place is None or task.at_most is None or task.op not in PRESSINGS:
            continue
        found = verdicts.get(place, {}).get(LIMIT_ASPECT)
        high = found.advised.high if found and isinstance(found.advised, Span) else COLD
        if found is None or found.clash or not 0 < high - task.at_most <= ROUNDING:
            continue
        start = None if task.step.iron is None else float(task.step.iron.temperature_c)
        about = (LIMIT_ASPECT, (COLD, task.at_most), 0, start, "must", "damage", WHY, ("derived",))
        heard = [*found.because, *found.given_up, Said(HERE, Claim(*about, 0, "this garment"))]
        cooler = decide(found.aspect, heard, together=True)
        verdicts[place] = {**verdicts[place], LIMIT_ASPECT: cooler}
    return replace(advice, judgement=replace(advice.judgement, verdicts=verdicts))

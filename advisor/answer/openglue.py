"""What is told of a piece whose glue is ruled out: no kind of it, before another is chosen."""

from __future__ import annotations

from msgspec.structs import replace

from advisor.claims.judgement import Advice
from advisor.claims.workarounds import INTERFACING
from advisor.order.unsettled import TO_SETTLE
from advisor.order.work import Work

NOT_FUSED = "interfacing-instead-of-glue"
"""How an interfacing is made whose glue is ruled out."""


def with_glue_open(advice: Advice, work: Work) -> Advice:
    """The advice without the kind of a glue where the order asks first what does instead."""
    tasks = (t for t in work.tasks.values() if t.place is not None and t.operation is not None)
    open_ = {
        t.place.name
        for t in tasks
        if t.place and t.operation
        if t.operation.does == TO_SETTLE or t.place.method.id == NOT_FUSED
    }
    verdicts = {
        place: {a: v for a, v in found.items() if a != INTERFACING or v.clash}
        if place.scope == "seam" and place.name in open_
        else found
        for place, found in advice.judgement.verdicts.items()
    }
    return replace(advice, judgement=replace(advice.judgement, verdicts=verdicts))

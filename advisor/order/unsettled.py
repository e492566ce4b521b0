"""What is told of a piece whose glue is ruled out: nobody has chosen yet what does instead."""

from __future__ import annotations

from collections.abc import Sequence
from typing import TYPE_CHECKING, Final

from msgspec.structs import replace

from advisor.claims.collect import Place
from advisor.claims.workarounds import INTERFACING
from advisor.decide.changes import REPLACING
from advisor.order.cures import cured_earlier, fused_first
from advisor.order.fusing import DWELL, too_hot, too_long

if TYPE_CHECKING:
    from advisor.claims.judgement import Advice
    from advisor.knowledge.model import Knowledge
    from advisor.knowledge.ordering import Operation
    from advisor.order.facts import Facts
    from advisor.order.kinds import SeamPlace
    from advisor.order.setups import Setups

INTERFACE: Final = "interface"
TO_SETTLE: Final = (
    "Settle first what backs {name} instead of the {how}, as the sheet offers it; then back its "
    "piece, flat and by itself."
)


def glue_ruled_out(seam: SeamPlace, setups: Setups) -> bool:
    """Whether a layer bars a glue that is not fused before, or nothing beside it bears it.

    So does a clash against which something else is offered in its place: nobody has chosen yet.
    """
    advice, knowledge = setups.advice, setups.knowledge
    kind = advice.judgement.verdicts.get(Place("seam", seam.name), {}).get(INTERFACING)
    first = fused_first(seam.seam, setups.garment, knowledge)
    first = first or cured_earlier(seam.name, advice, kind)
    lying = setups.fused_to(seam)
    hot = too_hot(setups.fuse_iron(seam), map(setups.bears_alone, lying))
    times = [setups.verdict(setups.alone((n, n)), DWELL) for n in lying]
    barred = bool(kind and kind.clash) and not first
    long = too_long(setups.about_notions(seam), times)
    return barred or hot or long or glue_replaced(seam, advice, knowledge)


def glue_replaced(place: SeamPlace, advice: Advice, knowledge: Knowledge) -> bool:
    """Whether what is offered first against a clash of a place does away with a notion of it."""
    here = (c for c in advice.judgement.conflicts if place.name in c.places)
    first = [cures[0] for c in here if (cures := advice.cures.get(c.key))]
    how = {remedy.id: remedy.change.get("do") for remedy in knowledge.remedies}
    return any(
        how[cure.remedy] in REPLACING and cure.words.get("notion") in place.notions
        for cure in first
    )


def with_unsettled(listed: Sequence[Operation], place: SeamPlace, facts: Facts) -> list[Operation]:
    """The work on a place, its backing as a question where its glue is ruled out."""
    return [
        replace(op, does=TO_SETTLE)
        if op.id == INTERFACE and facts.setups.glues_left_out(place)
        else op
        for op in listed
    ]

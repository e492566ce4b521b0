"""What is told of a piece whose glue is ruled out: nobody has chosen yet what does instead."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace
from typing import TYPE_CHECKING, Final

if TYPE_CHECKING:
    from advisor.knowledge.ordering import Operation
    from advisor.order.facts import Facts
    from advisor.order.kinds import SeamPlace

INTERFACE: Final = "interface"
TO_SETTLE: Final = (
    "Settle first what backs {name} instead of the {how}, as the sheet offers it; then back its "
    "piece, flat and by itself."
)


def with_unsettled(listed: Sequence[Operation], place: SeamPlace, facts: Facts) -> list[Operation]:
    """The work on a place, its backing as a question where its glue is ruled out."""
    return [
        replace(op, does=TO_SETTLE)
        if op.id == INTERFACE and facts.setups.glues_left_out(place)
        else op
        for op in listed
    ]

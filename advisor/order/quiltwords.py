"""What is said of a shell that is tried on before it is quilted for good."""

from __future__ import annotations

from collections.abc import Sequence
from typing import Final

from advisor.order.facts import Facts
from advisor.order.holdwords import taken_off
from advisor.order.kinds import SeamPlace
from advisor.order.quilting import waits_for_the_fitting

LAID_FLAT: Final = (
    "; then trace every line with thread, {opened}: {quilting} comes only now, on the flat pieces"
)


def flat_for_quilting(places: Sequence[SeamPlace], facts: Facts) -> str:
    """What is done after the fitting with a shell that is quilted only then; "" of every other."""
    quilted = [p for p in places if waits_for_the_fitting(p, facts.fitting)]
    cloths = {c for p in quilted for c in p.cloths}
    basted = [p for p in places if facts.fitting.basted(p) and set(p.cloths) & cloths]
    if not quilted or not basted:
        return ""
    return LAID_FLAT.format(opened=taken_off(basted, facts), quilting=quilted[0].name)

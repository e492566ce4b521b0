"""What lies under the iron at a stage of a place."""

from __future__ import annotations

from collections.abc import Sequence

from advisor.claims.collect import Place
from advisor.knowledge.ordering import Operation
from advisor.order.beside import laid_on
from advisor.order.easing import SHRINK_EASE, cap_alone
from advisor.order.kinds import SeamPlace
from advisor.order.precedences import DRAWN
from advisor.order.setups import Setups

POCKET, LAID = "patch-pocket", "lay-on"


def under_iron(
    op: Operation, place: SeamPlace, places: Sequence[SeamPlace], setups: Setups
) -> Place:
    """Nothing that is drawn in yet, and nothing below a pocket.

    A channel is pressed empty, and all the same as the sheet tells of it. A piece that is laid
    on has its edges turned while it is loose, at a heat of its own. Of a hem whose lining comes
    after it the sheet itself tells how the shell is pressed (`claims.lining_hem`).
    """
    works = [stage.work for stage in place.method.stages]
    if op.verb == SHRINK_EASE:
        return cap_alone(place, setups)
    if place.kind.id == POCKET and op.id in works[: works.index(LAID) if LAID in works else 0]:
        return setups.alone(laid_on(place, places))
    drawn = works.index(DRAWN) if DRAWN in works else -1
    if op.id in works and works.index(op.id) < drawn:
        return setups.empty(place)
    return Place("seam", place.name)

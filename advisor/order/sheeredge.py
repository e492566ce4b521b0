"""To which side the allowances of a sheer and a firm cloth are pressed: they would be seen."""

from __future__ import annotations

from typing import TYPE_CHECKING, Final

from advisor.construction.panels import sides_of
from advisor.order.namewords import SHEER

if TYPE_CHECKING:
    from advisor.order.facts import Facts
    from advisor.order.kinds import SeamPlace

LAID: Final = "lay-on"
SEAMED: Final = frozenset({"seam", "yoke", "gathered-edge"})


def laid_onto_the_firm(place: SeamPlace, facts: Facts) -> str:
    """How the press of such a seam ends; "" where both edges are seen, or neither, or lie open.

    Nor has one such allowances of which both pieces are of the same layers, or what is laid on.
    """
    if any(stage.work == LAID for stage in place.method.stages) or _alike(place):
        return ""
    sheer = {name for name in place.cloths if facts.least(name, "sheer") >= SHEER}
    firm = [name for name in dict.fromkeys(place.cloths) if name not in sheer]
    joins = place.kind.id in SEAMED and place.unit == "shell" and not facts.open_seam(place)
    return f", both allowances laid onto {firm[0]}" if joins and sheer and len(firm) == 1 else ""


def _alike(place: SeamPlace) -> bool:
    one, other = ({use.cloth for use in side} for side in sides_of(place.seam))
    return one == other

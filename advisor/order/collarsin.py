"""A collar without a stand that is caught between a neck and its facing."""

from __future__ import annotations

from collections.abc import Callable
from typing import TYPE_CHECKING, Final

from advisor.knowledge import nouns
from advisor.order.kinds import SeamPlace
from advisor.project.headwords import speaks_of

if TYPE_CHECKING:
    from advisor.order.facts import Facts

COLLAR, ATTACHED, FACING = "collar", "collar-attach", "facing"
LAYERS: Final = 3
"""A neck, its facing and what lies between them."""


def answers(place: SeamPlace, facts: Facts) -> dict[str, Callable[[], bool]]:
    """The facts of a place that are told here."""
    return {"collar caught in it": lambda: catches_a_collar(place, facts)}


def catches_a_collar(place: SeamPlace, facts: Facts) -> bool:
    """Whether the layers of a neck edge hold a collar made up elsewhere, that nothing else sets."""
    uses = [use for use in place.seam.uses if use.cloth in place.cloths]
    neck = place.role.id == FACING and speaks_of(place.name, nouns.NECKS)
    if not neck or len(uses) < LAYERS or any(p.role.id == ATTACHED for p in facts.places):
        return False
    collars = (p for p in facts.places if p.role.id == COLLAR and p.kind.family == "edge")
    return any(set(p.cloths) <= set(place.cloths) for p in collars)

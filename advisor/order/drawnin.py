"""What is drawn up into a waist of its own place: gathered here, and sewn with that, once."""

from __future__ import annotations

from typing import TYPE_CHECKING, Final

from advisor.project.onewaist import waist_that_joins
from advisor.project.toldtwice import told_at

if TYPE_CHECKING:
    from advisor.order.facts import Facts
    from advisor.order.kinds import SeamPlace

WAIST: Final = "waist"
SEWN_THERE: Final = frozenset(
    {"stay-stitch", "stay", "baste", "join", "press", "grade", "neaten-early", "neaten-after"}
)
"""Work on the line of the waist, which is done where that is joined."""


def joined_by_the_waist(place: SeamPlace, facts: Facts) -> bool:
    """Whether some waist joins the cloths of a gathered edge along the very same line."""
    role = facts.knowledge.order.kinds.get(WAIST)
    phrases = role.words if role else ()
    return waist_that_joins(place.seam, facts.garment.seams, phrases) is not None


def left_to_the_waist(op: str, place: SeamPlace, facts: Facts) -> bool:
    """Whether a piece of work on a gathered edge is done at the waist that joins it.

    So is all of a place that is told once more at another.
    """
    if told_at(place.seam, facts.garment.seams) is not None:
        return True
    return op in SEWN_THERE and joined_by_the_waist(place, facts)

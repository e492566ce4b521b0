"""What is basted to be tried on is in the garment: an iron near it meets it as if it was sewn."""

from __future__ import annotations

from collections.abc import Iterable
from typing import Final

from advisor.knowledge.ordering import SEWN
from advisor.order.tasks import Task

TRIED: Final = "basted to try on"
NEAR: Final = frozenset({*SEWN, "bone", "baste-backing", "stay", "draw-in"})
"""The work that brings a layer to where a later pressing reaches it."""


def brings_in(task: Task) -> bool:
    """Whether a task brings a layer to where a later pressing reaches it."""
    return task.op in NEAR or TRIED in task.tags


def both_basted(hot: Task, joining: Task, tasks: Iterable[Task]) -> bool:
    """Whether two places are basted for one fitting, so that sewing the one brings nothing in."""
    names = {t.place.name for t in tasks if TRIED in t.tags and t.place is not None}
    both = (task.place for task in (hot, joining))
    return all(place is not None and place.name in names for place in both)

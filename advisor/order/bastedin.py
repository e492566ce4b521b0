"""What is basted to be tried on is in the garment: an iron near it meets it as if it was sewn."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from typing import Final

from advisor.knowledge.ordering import SEWN
from advisor.order.tasks import Task

TRIED: Final = "basted to try on"
NEAR: Final = frozenset({*SEWN, "bone", "baste-backing", "stay", "tape", "draw-in"})
"""The work that brings a layer to where a later pressing reaches it."""


def brings_in(task: Task) -> bool:
    """Whether a task brings a layer to where a later pressing reaches it."""
    return task.op in NEAR or TRIED in task.tags


def both_basted(hot: Task, joining: Task, tasks: Iterable[Task]) -> bool:
    """Whether two places are basted for one fitting, so that sewing the one brings nothing in."""
    names = basted_tasks(tasks)
    both = (task.place for task in (hot, joining))
    return all(place is not None and place.name in names for place in both)


def basted_tasks(tasks: Iterable[Task]) -> dict[str, Task]:
    """The task that bastes each place for a fitting, by the name of the place."""
    return {t.place.name: t for t in tasks if TRIED in t.tags and t.place is not None}


def as_tried(first: Task, second: Task, basted: Mapping[str, Task]) -> Task:
    """What really comes before a task that readies a place for its basting, as its piping.

    What is sewn only after the fitting cannot come before that; its own basting does.
    """
    if first.place is None or second.place is None or first.place.name == second.place.name:
        return first
    own, other = basted.get(first.place.name), basted.get(second.place.name)
    early = own is not None and other is not None and second.stage < other.stage
    return own if own is not None and early and first.stage > own.stage else first

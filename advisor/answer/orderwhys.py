"""Why a step stands where it does, in one sentence, and each sentence once in an order."""

from __future__ import annotations

from collections.abc import Sequence
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from advisor.order.steps import Precedence
    from advisor.order.tasks import Task
    from advisor.order.work import Work

ROUTINE = frozenset({"cut", "mark", "shrink", "last-press", "label", "test", "stay-stitch"})
"""What every garment does, so that standing before or after it says nothing."""
LOOKS_ON = frozenset({"press", "turn", "hot press", "press-alone", "fuse", "grade"})
"""Work that is told by what it has to come before."""


def whys(work: Work) -> dict[str, str]:
    """The reason of each step that has one to tell, by the name of the step.

    A reason that an earlier step has told of other places is not told again: "why FILE STEP
    order" has them all.
    """
    places = {task.place.name.lower() for task in work.tasks.values() if task.place}
    names = sorted(places, key=lambda name: (-len(name), name))
    told: set[str] = set()
    found: dict[str, str] = {}
    for name in work.order:
        side, link = _best(work, work.tasks[name])
        if link is None or name in work.done:
            continue
        said = _without_names(link.why, names)
        if said not in told:
            told.add(said)
            other = link.after if side == "before" else link.before
            found[name] = f"{side} {other}: {link.why}"
    return found


def _best(work: Work, task: Task) -> tuple[str, Precedence | None]:
    """The one reason that says most about a step's place, and which side of it that names."""
    place = {name: k for k, name in enumerate(work.order)}
    before = [p for p in work.reasons.get(task.id, ()) if _telling(work, p, task)]
    after = [p for p in work.leads.get(task.id, ()) if _telling(work, p, task)]
    looks_on = task.op in LOOKS_ON or task.op.startswith("neaten")
    if after and (looks_on or not before):
        return "before", min(after, key=lambda p: (p.strength != "must", place[p.after], p.why))
    if before:
        return "after", max(before, key=lambda p: (p.strength == "must", place[p.before], p.why))
    return "", None


def _telling(work: Work, item: Precedence, task: Task) -> bool:
    """Whether a reason says more than what every garment does."""
    other = work.tasks[item.before if item.after == task.id else item.after]
    if other.op in ROUTINE:
        return False
    return not (other.place and task.place and other.place.name == task.place.name)


def _without_names(said: str, names: Sequence[str]) -> str:
    """A reason without the places that it is told of."""
    said = said.lower()
    for name in names:
        said = said.replace(name, "")
    return said

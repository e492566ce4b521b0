"""A name of its own for each step."""

from __future__ import annotations

from msgspec.structs import replace

from advisor.order.tasks import Task


def each_named(tasks: list[Task]) -> list[Task]:
    """The tasks with a name for each: two pieces, or a piece and a seam, may be called alike."""
    taken: set[str] = set()
    found = []
    for task in tasks:
        name, count = task.id, 2
        if name in taken and task.place is None and len(task.cloths) == 1:
            name = f"{task.id} of {task.cloths[0]}"
        while name in taken:
            name, count = f"{task.id} {count}", count + 1
        taken.add(name)
        found.append(task if name == task.id else replace(task, step=replace(task.step, id=name)))
    return found

"""How many edges the order of work neatens at each place, so that strips are cut for no other."""

from __future__ import annotations

from typing import Final

from advisor.order.work import Work

EARLY, AFTER, BAG, FACING = "neaten-early", "neaten-after", "neaten-bag", "neaten-facing"
TOGETHER: Final = frozenset({BAG, FACING})
"""One edge, or two that lie together."""
CLOSED: Final = "closed"


def edges_neatened(work: Work) -> dict[str, int]:
    """By place: 2 where each allowance is neatened by itself, 1 where both are taken together."""
    found: dict[str, int] = {}
    for task in work.tasks.values():
        if task.place is None or task.op not in (EARLY, AFTER, *TOGETHER):
            continue
        together = task.op in TOGETHER or (task.op == AFTER and task.place.role.pressed == CLOSED)
        found[task.place.name] = max(found.get(task.place.name, 0), 1 if together else 2)
    return found

"""What the order of work sews at each place besides its seam: edges neatened, further rows.

Strips and thread are bought for what is sewn, and for no more.
"""

from __future__ import annotations

from typing import Final

from advisor.order.step_words import STRIPPED
from advisor.order.topstitching import TOPSTITCH, rows_asked
from advisor.order.work import Work

EARLY, AFTER, BAG, FACING = "neaten-early", "neaten-after", "neaten-bag", "neaten-facing"
TOGETHER: Final = frozenset({BAG, FACING})
"""One edge, or two that lie together."""
CLOSED: Final = "closed"
EACH_BY_ITSELF: Final = "Hong Kong"
"""The finish that wraps each edge in a strip of its own, however they lie."""
FURTHER: Final = {
    "stay-stitch": 2,
    "zip": 1,
    "row": 1,
    "flap-over": 1,
    "topstitch": 1,
    "understitch": 1,
    "finish-by-hand": 1,
    "fell-lining": 1,
    "fell-hem": 1,
    "close-bones": 1,
}
"""Rows of a piece of work beyond the one of the seam: two pieces, two sides of a zip."""


def edges_in_strips(work: Work) -> dict[str, tuple[str, int]]:
    """By place: the finish that wraps an edge in a strip, and of how many edges.

    Both edges are taken together where the allowances lie to one side, each by itself elsewhere.
    """
    found: dict[str, tuple[str, int]] = {}
    for task in work.tasks.values():
        if task.place is None or task.op not in (EARLY, AFTER, *TOGETHER):
            continue
        finish = next((word for word in STRIPPED if f"({word}, " in task.step.does), "")
        closed = task.op == AFTER and task.place.role.pressed == CLOSED and finish != EACH_BY_ITSELF
        together = task.op in TOGETHER or closed
        if finish:
            found[task.place.name] = (finish, 1 if together else 2)
    return found


def further_rows(work: Work) -> dict[str, int]:
    """By place: rows that are sewn there besides the seam itself, by machine or by hand."""
    found: dict[str, int] = {}
    for task in work.tasks.values():
        if task.place is not None and task.op in FURTHER:
            rows = max(rows_asked(task.place), 1) if task.op == TOPSTITCH else 1
            found[task.place.name] = found.get(task.place.name, 0) + FURTHER[task.op] * rows
    return found

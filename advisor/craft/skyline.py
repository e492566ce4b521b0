"""Boxes laid one after another at the lowest place of a strip: the first that fits goes there.

The strip is kept as the outline of what lies in it. At its lowest step the first box of the order
goes in that is no wider, beside the higher neighbour; where none fits the step is filled up to the
lower neighbour, and nothing is laid beneath any more. That finds no hole between boxes, and costs
so little that far more orders are tried: from eight boxes on it comes out shorter (`strip`).
"""

from __future__ import annotations

from collections.abc import Sequence
from typing import Protocol

Way = tuple[int, int]
"""How a box lies: across the strip, and along it."""
Spot = tuple[int, int, int, int]
"""Along the strip, across it, and how it lies there."""


class Lying(Protocol):
    """What is laid: its ways, the multiples at which it begins, whether it keeps to the edge."""

    @property
    def ways(self) -> tuple[Way, ...]:
        """How it may lie."""

    @property
    def step(self) -> int:
        """What it begins at a multiple of; nothing where it may begin anywhere."""

    @property
    def at_edge(self) -> bool:
        """Whether it lies at the left edge."""


def lay(
    across: int, order: Sequence[Lying], below: int | None
) -> tuple[int, tuple[Spot, ...]] | None:
    """How long the strip comes out and where all lie; None once it is as long as `below`."""
    outline: list[tuple[int, int, int]] = [(0, across, 0)]
    left, spots, end = list(order), list[Spot](), 0
    while left:
        at = min(range(len(outline)), key=lambda i: (outline[i][2], outline[i][0]))
        x, room, low = outline[at]
        found = _first(left, x, room)
        if found is None:
            top = min(outline[i][2] for i in (at - 1, at + 1) if 0 <= i < len(outline))
            outline[at] = (x, room, top)
        else:
            item, (wide, long) = left.pop(found[0]), found[1]
            y = -(-low // item.step) * item.step if item.step else low
            end = max(end, y + long)
            if below is not None and end >= below:
                return None
            right = not item.at_edge and _higher(outline, at + 1) > _higher(outline, at - 1)
            here = x + room - wide if right else x
            spots.append((y, here, wide, long))
            rest = (x, room - wide, low) if right else (x + wide, room - wide, low)
            laid = (here, wide, y + long)
            outline[at : at + 1] = [s for s in ((rest, laid) if right else (laid, rest)) if s[1]]
        _join(outline, at)
    return end, tuple(sorted(spots))


def _first(left: list[Lying], x: int, room: int) -> tuple[int, Way] | None:
    """The first box that fits a step of the outline, and how it lies there."""
    for i, item in enumerate(left):
        if item.at_edge and x:
            continue
        for way in item.ways:
            if way[0] <= room:
                return i, way
    return None


def _higher(outline: list[tuple[int, int, int]], i: int) -> float:
    """How far the outline reaches at a step; beyond both edges there is a wall."""
    return outline[i][2] if 0 <= i < len(outline) else float("inf")


def _join(outline: list[tuple[int, int, int]], at: int) -> None:
    """Make one of the steps about a changed one that reach as far."""
    for i in range(min(at + 2, len(outline) - 1), max(at - 1, 0), -1):
        (x, wide, top), (_, more, other) = outline[i - 1], outline[i]
        if top == other:
            outline[i - 1 : i + 1] = [(x, wide + more, top)]

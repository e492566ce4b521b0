"""Where many boxes end in a strip: each on top of what lies there, no hole looked for.

To look for holes costs the cube of the number of boxes, which is nothing for a garment and minutes
for a thousand tiles of a quilt. On the skyline a box costs as much as the skyline has steps; the
strip may come out a little longer, and is never short.
"""

from __future__ import annotations

Way = tuple[int, int]
"""How a box lies: across the strip, and along it."""


class Skyline:
    """How far the strip is taken at each place across: steps of (left side, height), from 0 on."""

    def __init__(self, across: int) -> None:
        self.across = across
        self.steps: list[tuple[int, int]] = [(0, 0)]

    def soonest(self, ways: tuple[Way, ...], step: int, *, at_edge: bool) -> tuple[int, int, Way]:
        """Where a box ends soonest (y, x), and which way it lies there; of equals the leftmost."""
        best = min(
            (self._on_top(x, way[0], step) + way[1], x, way)
            for way in ways
            for x in self._lefts(way[0], at_edge=at_edge)
        )
        end, x, way = best
        return end - way[1], x, way

    def lay(self, x: int, wide: int, top: int) -> None:
        """Take the strip from x on, so wide, as far as `top`."""
        right = x + wide
        behind = next(h for left, h in reversed(self.steps) if left <= right)
        kept = [step for step in self.steps if not x <= step[0] <= right]
        ends = [(right, behind)] if right < self.across else []
        self.steps = sorted([*kept, (x, top), *ends])

    def _lefts(self, wide: int, *, at_edge: bool) -> set[int]:
        if at_edge:
            return {0}
        sides = {left for left, _ in self.steps} | {left - wide for left, _ in self.steps}
        room = self.across - wide
        return {x for x in (*sides, 0, room) if 0 <= x <= room}

    def _on_top(self, x: int, wide: int, step: int) -> int:
        right, y = x + wide, 0
        for at, (left, height) in enumerate(self.steps):
            end = self.steps[at + 1][0] if at + 1 < len(self.steps) else self.across
            if left < right and end > x:
                y = max(y, height)
        return -(-y // step) * step if step else y

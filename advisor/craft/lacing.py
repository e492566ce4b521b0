"""How long a cord is that laces an opening: once across it for each hole, and its ends to hold.

A run crosses the opening aslant, from one hole to the next but one of the other side (`derived`).
It is reckoned as wide as the opening is drawn to get in and out (`common-practice`).
"""

from __future__ import annotations

import math
from typing import Final

from advisor.craft import checks

SOURCES: Final[tuple[str, ...]] = ("derived", "common-practice")
#: How far the edges part when it is opened to get in and out, mm.
OPENED_MM: Final = 150.0
#: How far apart the holes of one edge are, where no length tells, mm.
APART_MM: Final = 30.0


def cord_length(holes: int, row_mm: float | None = None) -> float:
    """Length in mm of a cord through so many holes, half of them on each edge, without its ends.

    Args:
        holes: of both edges together, two at least.
        row_mm: how long the row of one edge is.
    """
    pairs = checks.at_least("holes", holes, 2) / 2
    apart = APART_MM if row_mm is None or pairs <= 1 else row_mm / (pairs - 1)
    return holes * math.hypot(OPENED_MM, apart)

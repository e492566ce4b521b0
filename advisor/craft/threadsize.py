"""Thickness of a thread, its ticket number, and the needle that suits it.

Diameter 1/(28 √Ne) in, Ne = 590.54/tex (`peirce-1937`, `thread-bulletin-05`); metric ticket
3000/tex (`trade-ticket-2013`), cotton ticket 3 × 590.54/tex (`trade-ticket-2017`). Needle:
its eye is 1.4 × the thread (`trade-needle-sizing`) and about 0.4 × the blade (`memory`), so
NM ≈ 13 √tex (`derived`); `iso-13936-2` sews 45 tex with NM 90.
"""

from __future__ import annotations

import math
from typing import Final

from advisor.craft import checks
from advisor.units.factors import MM_PER_INCH, NM_US, TEX_COTTON_TICKET, TEX_NE, TEX_TICKET

SOURCES: Final[tuple[str, ...]] = (
    "peirce-1937",
    "thread-bulletin-05",
    "trade-ticket-2013",
    "trade-ticket-2017",
    "trade-needle-sizing",
    "memory",
    "derived",
)

#: Whose word the sold numbers of threads and needles are.
SOLD_SOURCES: Final[tuple[str, ...]] = (
    "trade-ticket-2013",
    "trade-ticket-2017",
    "trade-needle-sizing",
    "memory",
)
EYE_PER_THREAD: Final = 1.4
EYE_PER_BLADE: Final = 0.4
#: How much finer or thicker than worked out a needle may be for its thread: thicker, and its hole
#: is not filled; finer, and the thread chafes in its eye (estimate).
FINEST, THICKEST = 0.9, 1.5


def diameter(tex: float) -> float:
    """Diameter of a spun thread in mm, about 0.0373 √tex."""
    english_count = TEX_NE / checks.above("tex", tex)
    return MM_PER_INCH / (28 * math.sqrt(english_count))


def ticket(tex: float) -> float:
    """Metric ticket number, 3000/tex (sold numbers are rounded)."""
    return TEX_TICKET / checks.above("tex", tex)


def cotton_ticket(tex: float) -> float:
    """Cotton ticket number, 3 × 590.54/tex: not the metric one."""
    return TEX_COTTON_TICKET / checks.above("tex", tex)


def needle_for(tex: float) -> float:
    """The needle (NM, as worked out) whose eye is 40 % wider than the thread."""
    return 100 * diameter(tex) * EYE_PER_THREAD / EYE_PER_BLADE


def needle_sold(tex: float) -> int:
    """The sold needle size (NM) nearest to the worked-out one, the larger of two equals."""
    wanted = needle_for(tex)
    return min(NM_US, key=lambda size: (abs(size - wanted), -size))


def suits(tex: float, needle: float) -> bool:
    """Whether a thread runs freely in the eye of a needle (NM) and fills the hole that it makes."""
    return FINEST <= needle / needle_for(tex) <= THICKEST

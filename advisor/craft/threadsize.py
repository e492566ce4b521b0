"""Thickness of a thread, its ticket number, and the needle that suits it.

Diameter 1/(28 √Ne) in, Ne = 590.54/tex (`peirce-1937`, `thread-bulletin-05`); metric ticket
3000/tex (`trade-ticket-2013`), cotton ticket 3 × 590.54/tex (`trade-ticket-2017`). Needle:
its eye is 1.4 × the thread (`trade-needle-sizing`) and about 0.4 × the blade (`memory`), so
NM ≈ 13 √tex (`derived`); `iso-13936-2` sews 45 tex with NM 90. NM 60 + 5 × (US − 8) below
US 19 (`trade-needle-number`).
"""

from __future__ import annotations

import math
from typing import Final

from advisor.craft import checks

SOURCES: Final[tuple[str, ...]] = (
    "peirce-1937",
    "thread-bulletin-05",
    "trade-ticket-2013",
    "trade-ticket-2017",
    "trade-needle-sizing",
    "trade-needle-number",
    "memory",
    "derived",
)

NE_TEX: Final = 590.54
EYE_PER_THREAD: Final = 1.4
EYE_PER_BLADE: Final = 0.4
NEEDLE_SIZES: Final[dict[int, int]] = {
    60: 8, 65: 9, 70: 10, 75: 11, 80: 12, 85: 13, 90: 14, 95: 15, 100: 16, 105: 17, 110: 18,
    120: 19, 125: 20, 130: 21, 140: 22, 160: 23, 200: 25,
}  # fmt: skip


def diameter(tex: float) -> float:
    """Diameter of a spun thread in mm, about 0.0373 √tex."""
    english_count = NE_TEX / checks.above("tex", tex)
    return 25.4 / (28 * math.sqrt(english_count))


def ticket(tex: float) -> float:
    """Metric ticket number, 3000/tex (sold numbers are rounded)."""
    return 3000 / checks.above("tex", tex)


def cotton_ticket(tex: float) -> float:
    """Cotton ticket number, 3 × 590.54/tex: not the metric one."""
    return 3 * NE_TEX / checks.above("tex", tex)


def needle_for(tex: float) -> float:
    """The needle (NM, as worked out) whose eye is 40 % wider than the thread."""
    return 100 * diameter(tex) * EYE_PER_THREAD / EYE_PER_BLADE


def needle_sold(tex: float) -> int:
    """The sold needle size (NM) nearest to the worked-out one, the larger of two equals."""
    wanted = needle_for(tex)
    return min(NEEDLE_SIZES, key=lambda size: (abs(size - wanted), -size))


def us_size(nm: int) -> int:
    """The US number of a needle, a label only."""
    if nm not in NEEDLE_SIZES:
        raise ValueError(f"NM {nm} is not a sold needle size")
    return NEEDLE_SIZES[nm]

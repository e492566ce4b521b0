"""By how much the two cloths of a seam part in cleaning, and what ease a lining needs for it.

Two edges of one length L (mm) that shrink by shares s and t end L × |s - t| (mm) apart, along the
seam or across it (`derived`). Cleaners call up to about 3 % of relaxing normal
(`lcn-shrinkage-2019`); edges that part by more ripple for certain, and from 1 % on a smooth cloth
shows it (`estimate`). A lining that shrinks by t inside a shell that shrinks by s is as long as the
shell afterwards if it is cut L × (1 - s) / (1 - t); the trade adds a fold of ease at the hem and a
pleat at the centre back besides (`common-practice`). Limits: relaxing of cloth as it is bought;
felting of wool and the second shrinking of cotton knits come on top.
"""

from __future__ import annotations

from typing import Final

from advisor.craft import checks

SOURCES: Final[tuple[str, ...]] = ("derived", "lcn-shrinkage-2019", "estimate")
EASE_SOURCES: Final[tuple[str, ...]] = ("derived", "common-practice")
#: What cleaners call normal, a share.
TOLERATED: Final = 0.03
#: From here on a smooth seam may ripple, a share (estimate).
SEEN: Final = 0.01
#: Ease of a lining at its hem, mm: the fold that hangs over the seam (common practice).
HEM_EASE_MM: Final = 15.0


def apart(length_mm: float, one: float, other: float) -> float:
    """How far two edges of a length in mm end apart, mm, if they shrink by these shares."""
    length = checks.above("length", length_mm)
    return length * abs(checks.share("shrinkage", one) - checks.share("shrinkage", other))


def longer_lining(length_mm: float, shell: float, lining: float) -> float:
    """How much longer than its shell a lining is cut, mm, to end no shorter; never below 0."""
    length = checks.above("length", length_mm)
    kept = (1 - checks.share("shrinkage", shell)) / (1 - checks.share("shrinkage", lining))
    return max(0.0, length * (kept - 1))

"""What each finish needs of an allowance, and how allowances are trimmed, cut and turned.

Finishes and their steps: see the source ids in each row of `NEEDS`. Grading 1/4 in outside
and 1/8 in inside: `gw-apparel-2012`, `apparel-1-3-03`; order for many
layers `rough-sewing`. Clip spacing `apparel-1-3-03`. Turn of cloth `threads-131`,
`threads-197`; its geometry `derived`.
"""

from __future__ import annotations

import math
from enum import StrEnum
from typing import Final

from msgspec import Struct

from advisor.craft import checks
from advisor.units.factors import MM_PER_INCH as INCH

SOURCES: Final[tuple[str, ...]] = (
    "gw-apparel-2012",
    "apparel-1-3-03",
    "rough-sewing",
    "threads-131",
    "threads-197",
    "derived",
    "design-choice",
)

EIGHTH: Final = INCH / 8


class Finish(StrEnum):
    """Ways to finish the edges of a seam."""

    NONE = "none"
    PINKED = "pinked"
    ZIGZAG = "zigzag"
    TURNED = "turned and stitched"
    DOUBLE_STITCHED = "double-stitched"
    FRENCH = "French"
    MOCK_FRENCH = "mock French"
    FELLED = "flat-felled"
    HONG_KONG = "Hong Kong"
    BOUND = "bound"
    OVERLOCK_2 = "overlock, 2-thread"
    OVERLOCK_3 = "overlock, 3-thread"
    OVERLOCK_4 = "overlock, 4-thread"
    SAFETY_5 = "safety stitch, 5-thread"


class FinishNeed(Struct, frozen=True):
    """What a finish needs: allowance and finished width in mm, and its limits."""

    finish: Finish
    needs_mm: float
    finished_mm: float
    curves: bool
    sources: tuple[str, ...]


class Fit(Struct, frozen=True):
    """A finish against an allowance in mm; `short_mm` is what is missing (0 if it fits)."""

    finish: Finish
    needs_mm: float
    allowance_mm: float
    short_mm: float
    sources: tuple[str, ...]

    @property
    def fits(self) -> bool:
        """Whether the allowance is wide enough."""
        return self.short_mm <= 0


#: First row, trim to, second row: wrong sides together, trim, turn, stitch (mm).
FRENCH_STEPS: Final = (3 * EIGHTH, EIGHTH, 2 * EIGHTH)
FRENCH_NEED: Final = FRENCH_STEPS[0] + FRENCH_STEPS[2]
#: Other published (first, second) rows in mm, by source; an allowance that is short may do for one.
FRENCH_VARIANTS: Final[dict[str, tuple[float, float]]] = {
    "trade-french-seam-2": (2 * EIGHTH, 2 * EIGHTH),
    "forum-french-seam": (2 * EIGHTH, 3 * EIGHTH),
    "dressmaking-course-1": (1 * EIGHTH, 2 * EIGHTH),
}

_FRENCH = ("trade-french-seam-1", "trade-french-seam-2", "dressmaking-course-1")
_OVERLOCK = ("overlock-book", "sca-2-220")
_ROWS: Final[tuple[FinishNeed, ...]] = (
    FinishNeed(Finish.NONE, 6.0, 6.0, True, ("series-stretch", "memory")),
    FinishNeed(Finish.PINKED, 10.0, 10.0, True, ("ok-4h-801",)),
    FinishNeed(Finish.ZIGZAG, 2 * EIGHTH, 2 * EIGHTH, True, ("ok-4h-801",)),
    FinishNeed(Finish.TURNED, 15.0, 15.0 - EIGHTH, False, ("trade-clean-finish",)),
    FinishNeed(Finish.DOUBLE_STITCHED, 15.0, EIGHTH, True, ("siemsen-chiffon",)),
    FinishNeed(Finish.FRENCH, FRENCH_NEED, 2 * EIGHTH, False, _FRENCH),
    FinishNeed(Finish.MOCK_FRENCH, 15.0, 7.5, True, ("trade-mock-french",)),
    FinishNeed(Finish.FELLED, 15.0, 2 * EIGHTH, False, ("trade-mock-french", "trade-clean-finish")),
    FinishNeed(Finish.HONG_KONG, 15.0, 15.0, True, ("encyclopedia-hong-kong",)),
    FinishNeed(Finish.BOUND, 15.0, 15.0, True, ("astm-d4965", "memory")),
    FinishNeed(Finish.OVERLOCK_2, 5.0, 5.0, True, _OVERLOCK),
    FinishNeed(Finish.OVERLOCK_3, 5.0, 5.0, True, _OVERLOCK),
    FinishNeed(Finish.OVERLOCK_4, 7.0, 7.0, True, ("fashion-designers",)),
    FinishNeed(Finish.SAFETY_5, 13.0, 13.0, True, ("overlock-book",)),
)
NEEDS: Final[dict[Finish, FinishNeed]] = {row.finish: row for row in _ROWS}


def narrower_french(allowance_mm: float) -> tuple[float, float] | None:
    """First and second row in mm of the widest published French seam that fits, if one does."""
    fits = [rows for rows in FRENCH_VARIANTS.values() if sum(rows) <= allowance_mm]
    return max(fits, key=sum, default=None)


def need(finish: Finish, *, thick_turn: bool = False) -> float:
    """The allowance in mm that a finish needs.

    `thick_turn` adds 1/8 in to a French seam in bulkier cloth (`forum-french-seam`).
    """
    extra = EIGHTH if thick_turn and finish is Finish.FRENCH else 0.0
    return NEEDS[finish].needs_mm + extra


def fit(finish: Finish, allowance_mm: float, *, thick_turn: bool = False) -> Fit:
    """A finish against the project's allowance.

    5/8 in and 15 mm are the same allowance to the trade, so a shortfall within 1 mm on a
    French seam is not counted (`common-practice`: its rows are then 9 and 6 mm).
    """
    have = checks.at_least("allowance", allowance_mm, 0)
    wants = need(finish, thick_turn=thick_turn)
    missing = max(0.0, wants - have)
    if finish is Finish.FRENCH and missing <= 1.0:
        missing = 0.0
    return Fit(finish, wants, have, missing, NEEDS[finish].sources)


#: Strip for a bound edge, both edges folded, 6 mm wide when finished: from and to, mm (`memory`).
BOUND_STRIP_MM: Final[tuple[float, float]] = (25.0, 32.0)
#: What joins and ends of a bias strip take on top of its length (`estimate`).
STRIP_JOINS: Final = 0.1
#: Both allowances of a join, 6 mm each (`common-practice`).
JOIN_MM: Final = 12.0


def hong_kong_strip(allowance_mm: float) -> float:
    """Width in mm of the bias strip for a Hong Kong finish: allowance + 1/4 in."""
    return checks.above("allowance", allowance_mm) + INCH / 4


def strip_square(length_mm: float, width_mm: float) -> float:
    """Side in mm of the square that gives so much bias strip, its joins in it (`strip_length`)."""
    area = _strip_area(length_mm, width_mm)
    return JOIN_MM + math.sqrt(JOIN_MM**2 + area)


def strip_length(length_mm: float, width_mm: float, across_mm: float) -> float:
    """How long a cloth is, mm, that gives so much bias strip and is so wide.

    Cut on the diagonal and beside it: a × b gives (a + b)/√2 strips of a width, joined on the
    straight grain, so that each join takes `JOIN_MM` × √2 of length and all of them `JOIN_MM` ×
    (a + b) of cloth; two corners, each a width squared at most, are too small to use (`derived`).
    """
    across = checks.above("cloth less its joins", across_mm - JOIN_MM)
    return (_strip_area(length_mm, width_mm) + JOIN_MM * across_mm) / across


def _strip_area(length_mm: float, width_mm: float) -> float:
    wide = checks.above("strip width", width_mm)
    return checks.above("strip length", length_mm) * wide + 2 * wide * wide


class Grading(Struct, frozen=True):
    """Widths in mm to trim allowances to, the one next to the outside first and widest."""

    widths_mm: tuple[float, ...]
    sources: tuple[str, ...] = ("gw-apparel-2012", "apparel-1-3-03", "rough-sewing", "derived")


def needs_grading(plies: int, *, heavy: bool) -> bool:
    """Whether allowances are graded: heavy cloth, or three layers and more."""
    return heavy or checks.count("plies", plies) >= 3


def grade(plies: int, allowance_mm: float = 15.0) -> Grading:
    """Steps for so many allowances: each 1/8 in wider than the one inside it.

    Two give the published 1/4 and 1/8 in. Where the allowance is too narrow for steps of
    1/8 in the steps are evened out; none is below 1/8 in (ValueError if it would be).
    """
    number = checks.count("plies", plies)
    inner = EIGHTH
    if checks.above("allowance", allowance_mm) < inner:
        raise ValueError(f"an allowance of {allowance_mm:g} mm is below 1/8 in: nothing to grade")
    outer = min(allowance_mm, EIGHTH * max(2, number))
    if number == 1:
        return Grading((outer,))
    step = (outer - inner) / (number - 1)
    return Grading(tuple(outer - step * place for place in range(number)))


def turn_of_cloth(
    outer_mm: float, inner_mm: float, between_mm: float = 0.0, degrees: float = 180.0
) -> float:
    """Extra length in mm of an outer layer around a fold, over that of the inner one.

    Angle × distance of their middles: half of each thickness and what lies between, so
    π ((outer + inner)/2 + between) for a whole turn (`derived`).
    """
    angle = math.radians(checks.at_least("angle", degrees, 0))
    outer = checks.at_least("thickness", outer_mm, 0)
    inner = checks.at_least("thickness", inner_mm, 0)
    return angle * ((outer + inner) / 2 + checks.at_least("thickness between", between_mm, 0))


#: Clips and notches in a curved allowance: spacing from and to, mm (`apparel-1-3-03`).
CLIP_SPACING_MM: Final[tuple[float, float]] = (2 * EIGHTH, 4 * EIGHTH)
#: Understitching, mm from the seam (`memory`).
UNDERSTITCH_MM: Final[tuple[float, float]] = (INCH / 16, INCH / 8)


def favour(shell_mm: float) -> tuple[float, float]:
    """How far in mm a shell is rolled over its lining's edge: t to 2 t (`derived`)."""
    thickness = checks.above("shell thickness", shell_mm)
    return thickness, 2 * thickness

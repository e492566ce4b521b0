"""How much thread a seam takes, thread by thread, and what to buy.

T is the seam's thickness, S the stitches in a unit of length, W the width of an overedge,
all in mm here; a ratio is length of thread for a length of seam. 101: 3 + 2TS
(`trade-consumption-geometry`); 301: 2 + 2TS; 401: 4 + 2TS (`thread-bulletin-2008`); 504: two
published forms, the larger counts; 304 `derived`. Other classes by a thread maker's ratio
table (`thread-consumption-bulletin`, `trade-overedge-ratios`), or its sum of parts.
Sizes of thread and needle are in `threadsize`.
"""

from __future__ import annotations

import math
from collections.abc import Iterable
from typing import Final

from msgspec import Struct

from advisor.craft import checks

SOURCES: Final[tuple[str, ...]] = (
    "trade-consumption-geometry",
    "trade-consumption-formulas",
    "thread-bulletin-2008",
    "thread-consumption-bulletin",
    "trade-overedge-ratios",
    "trade-consumption-order",
    "derived",
)

#: Two published ranges, 10–15 % and 15–20 %, meet here (`trade-consumption-measured`,
#: `trade-consumption-2011`).
WASTAGE: Final = 0.15
#: Thread left at each end of a row of gathering or basting, mm (`estimate`).
TAIL_MM: Final = 100.0


class TableRatio(Struct, frozen=True):
    """A class's ratio from the table, with the needles' share and its source ids."""

    ratio: float
    needle_share: float
    sources: tuple[str, ...]


_TABLE = ("thread-consumption-bulletin",)
_BOTH = ("thread-consumption-bulletin", "trade-overedge-ratios")
TABLE: Final[dict[int, TableRatio]] = {
    406: TableRatio(18.0, 0.30, _TABLE),
    503: TableRatio(12.0, 0.55, _BOTH),
    504: TableRatio(14.0, 0.20, _BOTH),
    512: TableRatio(18.0, 0.25, _BOTH),
    514: TableRatio(19.0, 0.25, ("trade-consumption-order", "derived")),
    515: TableRatio(17.5, (5.5 * 0.25 + 12.0 * 0.55) / 17.5, ("derived",)),
    516: TableRatio(20.0, 0.20, (*_BOTH, "encyclopedia-overlock")),
    602: TableRatio(25.0, 0.20, _TABLE),
    605: TableRatio(28.0, 0.30, _TABLE),
}


class ThreadUse(Struct, frozen=True):
    """Thread by place, in the unit of the seam length it was worked from."""

    needle: float
    bobbin: float = 0.0
    looper: float = 0.0
    sources: tuple[str, ...] = SOURCES

    @property
    def total(self) -> float:
        """All threads together."""
        return self.needle + self.bobbin + self.looper

    def times(self, factor: float) -> ThreadUse:
        """So much thread, so many times over."""
        return ThreadUse(
            self.needle * factor, self.bobbin * factor, self.looper * factor, self.sources
        )


def _depth(thickness_mm: float, stitch_length_mm: float) -> float:
    """T × S, how many thicknesses of thread stand in a length of seam."""
    thick = checks.at_least("seam thickness", thickness_mm, 0)
    return thick / checks.above("stitch length", stitch_length_mm)


def chain(thickness_mm: float, stitch_length_mm: float) -> ThreadUse:
    """Stitch 101, single chain: 3 + 2TS, one thread."""
    return ThreadUse(3 + 2 * _depth(thickness_mm, stitch_length_mm))


def lockstitch(thickness_mm: float, stitch_length_mm: float) -> ThreadUse:
    """Stitch 301, lockstitch: 2 + 2TS, half needle, half bobbin."""
    half = 1 + _depth(thickness_mm, stitch_length_mm)
    return ThreadUse(half, bobbin=half)


def zigzag(thickness_mm: float, stitch_length_mm: float, width_mm: float) -> ThreadUse:
    """Stitch 304, zigzag: 2 √(1 + (w/L)²) + 2TS, half needle, half bobbin.

    L is the advance of one stitch and w the width of the zigzag.
    """
    depth = _depth(thickness_mm, stitch_length_mm)
    swing = checks.at_least("zigzag width", width_mm, 0) / stitch_length_mm
    half = math.hypot(1.0, swing) + depth
    return ThreadUse(half, bobbin=half)


def double_chain(thickness_mm: float, stitch_length_mm: float) -> ThreadUse:
    """Stitch 401, two-thread chain: 4 + 2TS, of which the needle has 1 + 2TS."""
    return ThreadUse(1 + 2 * _depth(thickness_mm, stitch_length_mm), looper=3.0)


def overedge_range(
    thickness_mm: float, stitch_length_mm: float, width_mm: float
) -> tuple[float, float]:
    """Stitch 504, both published ratios: 3 + 4S(W + T) and 5 + 4S(W + T)."""
    width = checks.above("overedge width", width_mm)
    bights = 4 * (width / checks.above("stitch length", stitch_length_mm))
    rise = bights + 4 * _depth(thickness_mm, stitch_length_mm)
    return 3 + rise, 5 + rise


def overedge(thickness_mm: float, stitch_length_mm: float, width_mm: float) -> ThreadUse:
    """Stitch 504, three-thread overedge: the larger published ratio, 20 % in the needle."""
    ratio = overedge_range(thickness_mm, stitch_length_mm, width_mm)[1]
    share = TABLE[504].needle_share
    return ThreadUse(ratio * share, looper=ratio * (1 - share))


def from_table(stitch: int) -> ThreadUse:
    """A class by the ratio table, for a seam of length 1."""
    if stitch not in TABLE:
        raise ValueError(f"no thread ratio for stitch {stitch}")
    row = TABLE[stitch]
    needle = row.ratio * row.needle_share
    return ThreadUse(needle, looper=row.ratio - needle, sources=row.sources)


def ratio(
    stitch: int, thickness_mm: float, stitch_length_mm: float, width_mm: float | None = None
) -> ThreadUse:
    """Thread for a seam of length 1: by formula where there is one, else by the table.

    504 without a width goes by the table; 304 without a width raises ValueError.
    """
    if stitch == 304:
        if width_mm is None:
            raise ValueError("a zigzag (304) needs its width")
        return zigzag(thickness_mm, stitch_length_mm, width_mm)
    if stitch == 504 and width_mm is not None:
        return overedge(thickness_mm, stitch_length_mm, width_mm)
    formulas = {101: chain, 301: lockstitch, 401: double_chain}
    if stitch in formulas:
        return formulas[stitch](thickness_mm, stitch_length_mm)
    checks.at_least("seam thickness", thickness_mm, 0)
    return from_table(stitch)


def gathering_rows(
    cut_width_mm: float, rows: int = 2, stitch_mm: float = 4.0, thickness_mm: float = 0.0
) -> ThreadUse:
    """Thread in mm for machine gathering rows: lockstitch on the width before gathering, tails."""
    width = checks.above("cut width", cut_width_mm)
    number = checks.count("rows", rows)
    row = lockstitch(thickness_mm, stitch_mm).times(width)
    return ThreadUse(
        number * (row.needle + 2 * TAIL_MM), bobbin=number * (row.bobbin + 2 * TAIL_MM)
    )


def hand_basting(length_mm: float, stitch_mm: float = 10.0, thickness_mm: float = 0.0) -> ThreadUse:
    """Thread in mm for a hand running stitch: 1 + 2TS (one rise and one fall a stitch), tails."""
    depth = _depth(thickness_mm, stitch_mm)
    return ThreadUse(checks.above("length", length_mm) * (1 + 2 * depth) + 2 * TAIL_MM)


def total(uses: Iterable[ThreadUse], wastage: float = WASTAGE) -> ThreadUse:
    """All seams of one colour together, wastage included."""
    many = list(uses)
    factor = 1 + checks.at_least("wastage", wastage, 0)
    sources = tuple(dict.fromkeys(source for use in many for source in use.sources))
    return ThreadUse(
        factor * sum(use.needle for use in many),
        factor * sum(use.bobbin for use in many),
        factor * sum(use.looper for use in many),
        sources,
    )


def reels(length: float, on_a_reel: float) -> int:
    """How many reels or cones hold so much thread, both in one unit."""
    needed = checks.at_least("thread", length, 0)
    return checks.up(needed / checks.above("thread on a reel", on_a_reel))

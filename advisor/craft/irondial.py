"""What an iron's dial mark means: a care-label ceiling, and a band that the sole swings in.

Ceilings: ISO 3758:2005 and :2012 (110/150/200 °C) and :2023 (120/160/210 °C), `iso-3758-2012`,
`iso-3758-2023`. Bands of a household thermostat: 70-120, 100-160, 140-210 °C, `iec-60311` from
memory. First heating overshoots the set mean by 10 to 40 K (memory).
"""

from __future__ import annotations

from typing import Final

from msgspec import Struct

SOURCES: Final = ("iso-3758-2012", "iso-3758-2023", "iec-60311", "memory")
IRON_STEP: Final = 5
"""How finely anybody sets an iron, K: estimate."""
ROUNDING: Final = 2.0
"""300 °F is 149 °C and stands for the 150 mark; a limit this close to a mark counts as it, K."""


class Mark(Struct, frozen=True):
    """A dial mark: its name, both label ceilings and its band, °C."""

    dots: int
    name: str
    ceiling: float
    ceiling_2023: float
    band: tuple[float, float]


MARKS: Final = (
    Mark(1, "one dot", 110.0, 120.0, (70.0, 120.0)),
    Mark(2, "two dots", 150.0, 160.0, (100.0, 160.0)),
    Mark(3, "three dots", 200.0, 210.0, (140.0, 210.0)),
)


def mark_for(limit: float) -> Mark | None:
    """The highest mark whose older ceiling is within a limit; None below the lowest mark.

    Args:
        limit: °C of the sole plate.
    """
    fitting = [mark for mark in MARKS if mark.ceiling <= limit + ROUNDING]
    return fitting[-1] if fitting else None


def overshoot(limit: float) -> float:
    """How far the band of the mark for a limit reaches above it, K; 0 where there is no mark."""
    mark = mark_for(limit)
    return max(0.0, mark.band[1] - limit) if mark else 0.0


def steam_possible(limit: float) -> bool:
    """Whether the sole may be hot enough for steam: not at one dot, where it drips."""
    mark = mark_for(limit)
    return mark is not None and mark.dots >= 2


def starts_too_cool(start: float) -> bool:
    """Whether a sole that is started at so many °C is set on the lowest dot, where it drips."""
    return start <= MARKS[0].band[1]


def starting(start: float) -> str:
    """Where a sole is set that starts as cool as the lowest mark, in words."""
    lowest = MARKS[0]
    return f"{'at' if start <= lowest.ceiling + ROUNDING else 'just above'} {lowest.name}"


def step_down(heat: float) -> int:
    """A setting of the dial that is no hotter."""
    return int(heat // IRON_STEP * IRON_STEP)

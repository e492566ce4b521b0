"""Refusals that every calculation shares: a bad number is named, never carried on.

All raise `ValueError` with the name of the number, its value and what would be accepted; a piece
that its cloth cannot hold is told with both widths, so that they can be said in other units.
"""

from __future__ import annotations

import math


class TooWideError(ValueError):
    """A piece that its cloth cannot hold: what it spans, what there is (mm), and its name."""

    def __init__(self, across: float, usable: float, bias: bool = False, name: str = "") -> None:
        self.across, self.usable, self.bias, self.name = across, usable, bias, name
        how = "on the bias spans" if bias else "is"
        super().__init__(
            f"a piece {how} {across:g} mm, which is wider than the cloth, {usable:g} mm"
        )


def finite(name: str, value: float) -> float:
    """The value itself, if it is an ordinary number."""
    if not math.isfinite(value):
        raise ValueError(f"{name} is not a number that can be measured: {value}")
    return value


def at_least(name: str, value: float, least: float) -> float:
    """The value itself, if it is not below the least that makes sense."""
    if finite(name, value) < least:
        raise ValueError(f"{name} must be at least {least:g}, not {value:g}")
    return value


def above(name: str, value: float, floor: float = 0.0) -> float:
    """The value itself, if it is above the floor (zero unless told)."""
    if finite(name, value) <= floor:
        raise ValueError(f"{name} must be more than {floor:g}, not {value:g}")
    return value


def share(name: str, value: float) -> float:
    """The value itself, if it is a share from 0 up to, but not reaching, 1."""
    if not 0.0 <= finite(name, value) < 1.0:
        raise ValueError(f"{name} must be a share from 0 to below 1, not {value:g}")
    return value


def count(name: str, value: int, least: int = 1) -> int:
    """The value itself, if it is a whole number not below the least."""
    if value != int(value) or value < least:
        raise ValueError(f"{name} must be a whole number, {least} or more, not {value}")
    return int(value)


def up(value: float) -> int:
    """The next whole number up, forgiving the last digits; a trace of something is still 1."""
    return math.ceil(value - 1e-9 * abs(value))

"""Skins to buy, by area: what their shape and their holes take of them is lost.

A skin is no rectangle, and its legs, belly and scars are left out: of a garment skin a quarter to a
third is lost (`common-practice`; the worse is taken). Skins are sold by the square foot
(`unl-ec77-498`), so the area is rounded up to a quarter of one.
"""

from __future__ import annotations

from typing import Final

from advisor.craft import checks
from advisor.units.factors import MM_PER_INCH

SOURCES: Final[tuple[str, ...]] = ("unl-ec77-498", "common-practice")
LOST: Final = 1 / 3
SQUARE_FOOT: Final = (12 * MM_PER_INCH) ** 2
"""Of a square foot, mm²."""


def to_buy(pieces_mm2: float) -> float:
    """The area of skins, mm², from which pieces of so much area are cut.

    Raises:
        ValueError: the area is not above nothing.
    """
    whole = checks.above("area", pieces_mm2) / (1 - LOST)
    step = SQUARE_FOOT / 4
    return checks.up(whole / step - 1e-9) * step

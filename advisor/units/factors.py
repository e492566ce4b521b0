"""Exact unit factors and the table of needle sizes.

Factors are exact by definition (international inch and yard, avoirdupois pound). Sources:
thread numbers thread-bulletin-05, metric ticket trade-ticket-2013, cotton ticket
trade-ticket-2017, momme momme-pages, needle sizes trade-needle-number.
"""

from __future__ import annotations

from collections.abc import Mapping

MM_PER_INCH = 25.4
MM_PER_YARD = 914.4
FEET_PER_M2 = (1000.0 / 304.8) ** 2
KG_PER_POUND = 0.45359237
GRAM_PER_OUNCE = KG_PER_POUND * 1000 / 16
SQUARE_METRE_PER_SQUARE_YARD = 0.9144**2
OUNCE_PER_SQUARE_YARD = GRAM_PER_OUNCE / SQUARE_METRE_PER_SQUARE_YARD
"""g/m² in one ounce per square yard, 33.9057…"""
MOMME = KG_PER_POUND * 1000 / (100 * 0.9144 * 45 * 0.0254)
"""g/m² in one momme, 4.33994…: a pound in 100 yards of silk 45 inches wide."""
TEX_TICKET = 3000.0
"""tex times metric ticket: the ticket is three times the metric count, 1000/tex."""
TEX_NM = 1000.0
"""tex times metric count (km per kg)."""
TEX_NE = KG_PER_POUND * 1e6 / (840 * 0.9144)
"""tex times English cotton count, 590.54…: hanks of 840 yards to the pound."""
TEX_COTTON_TICKET = 3 * TEX_NE
"""tex times cotton ticket, which is three times the English count (trade-ticket-2017)."""
NEWTON_PER_POUND = KG_PER_POUND * 9.80665
"""The force of a pound, its mass times standard gravity."""
PULL = {"metric": (1.0, "N/cm"), "us": (MM_PER_INCH / 10 / NEWTON_PER_POUND, "lb/in")}
"""By system: what N/cm is multiplied by to be read, and in which unit."""
ABSOLUTE_ZERO = -273.15

NM_US: Mapping[int, int] = {
    60: 8,
    65: 9,
    70: 10,
    75: 11,
    80: 12,
    85: 13,
    90: 14,
    95: 15,
    100: 16,
    105: 17,
    110: 18,
    120: 19,
    125: 20,
    130: 21,
    140: 22,
    160: 23,
    200: 25,
}
"""US label of each metric needle size; NM is the key, makers' tables disagree on the label."""
_US_NM = {us: nm for nm, us in NM_US.items()}


def us_size(nm: float) -> int | None:
    """Return the US label of a metric needle size, None for a size without one."""
    return NM_US.get(int(nm)) if nm == int(nm) else None


def nm_from_us(us: int) -> int:
    """Return the metric needle size of a US label.

    Raises:
        ValueError: no needle has that label.
    """
    if us not in _US_NM:
        raise ValueError(f"no needle is sold as US {us}")
    return _US_NM[us]


def fahrenheit(celsius: float) -> float:
    """Return degrees Fahrenheit."""
    return celsius * 9 / 5 + 32

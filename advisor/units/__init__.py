"""Quantities as a maker writes and reads them, held as plain numbers in one base unit each.

    length mm · weight g/m² · temperature °C · time s · tex (g/km) · stitch length mm ·
    needle NM (hundredths of a mm of blade) · percent and count, plain numbers

`factors` holds the numbers, `reading` takes a maker's text in, `showing` gives text out.
"""

from advisor.units.factors import (
    ABSOLUTE_ZERO,
    GRAM_PER_OUNCE,
    KG_PER_POUND,
    MM_PER_INCH,
    MM_PER_YARD,
    MOMME,
    NM_US,
    OUNCE_PER_SQUARE_YARD,
    TEX_COTTON_TICKET,
    TEX_NE,
    TEX_NM,
    TEX_TICKET,
    fahrenheit,
    nm_from_us,
    us_size,
)
from advisor.units.reading import KINDS, LARGEST, LONGEST_TEXT, parse
from advisor.units.showing import System, needle, show, show_range, show_size

__all__ = [
    "ABSOLUTE_ZERO",
    "GRAM_PER_OUNCE",
    "KG_PER_POUND",
    "KINDS",
    "LARGEST",
    "LONGEST_TEXT",
    "MM_PER_INCH",
    "MM_PER_YARD",
    "MOMME",
    "NM_US",
    "OUNCE_PER_SQUARE_YARD",
    "TEX_COTTON_TICKET",
    "TEX_NE",
    "TEX_NM",
    "TEX_TICKET",
    "System",
    "fahrenheit",
    "needle",
    "nm_from_us",
    "parse",
    "show",
    "show_range",
    "show_size",
    "us_size",
]

"""Quantities as a maker writes and reads them, held as plain numbers in one base unit each.

    length mm · weight g/m² · temperature °C · time s · tex (g/km) · stitch length mm ·
    needle NM (hundredths of a mm of blade) · percent and count, plain numbers

`factors` holds the numbers, `reading` takes a maker's text in, `showing` gives text out.
"""

from advisor.units.factors import fahrenheit
from advisor.units.reading import parse
from advisor.units.showing import System, needle, show, show_range, show_size

__all__ = ["System", "fahrenheit", "needle", "parse", "show", "show_range", "show_size"]

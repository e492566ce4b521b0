"""How much of a notion is bought, in words: a number, or a length and what is cut from it."""

from __future__ import annotations

from collections.abc import Iterable

from advisor.answer.model.needed import ToldNeed, ToldStrip
from advisor.units import System, show, show_range, show_size
from advisor.units.factors import MM_PER_INCH

IN_THE_SEAM = "in the seam"
NO_NUMBER = "count them, for how many is not said"
NO_LENGTH = "measure it, for no length is said"
TRIED = "; no stretch is said, so try it on before you cut it"
LESS = "{tried}: {less} shorter than the body there is usual, and body: at its layer reckons it"
IN_EIGHTHS = 9.0
US_WIDTH = MM_PER_INCH / 8
"""Above so many mm a width is sold in eighths of an inch."""
QUARTER = MM_PER_INCH / 4
LONGER = "or the next longer that the shop has"


def bought_text(row: ToldNeed, units: System) -> str:
    """What a shop is asked for: 9; 2.8 m of 25 mm (1 of 66 cm, and 25 mm more for its ends)."""
    sizes: dict[str, float] = {}
    for number, each in row.cut_mm:
        if number is not None and each is not None:
            size = show_size(each, units)
            sizes[size] = sizes.get(size, 0) + number
    lengths = [f"{number:.0f} of {size}" for size, number in sizes.items()]
    if row.number is not None:
        if not lengths:
            return _count_text(row, units)
        return f"{' and '.join(lengths)}, {row.buy or LONGER}"
    if row.group != IN_THE_SEAM or row.strip:
        return ""
    if row.buy:
        cut = f" ({_cut_text(row, lengths, units)})" if lengths else ""
        return f"{row.buy}{_wide_text(row, units)}{cut}"
    if row.cut_mm:
        return f"{NO_LENGTH}{_wide_text(row, units)}"
    return NO_NUMBER if row.least_mm is None else _sheet_text(row.least_mm, units)


def _count_text(row: ToldNeed, units: System) -> str:
    """How many, with what is bought to spare, and how the number of a row was told."""
    spare = f", and {row.spare} to spare" if row.spare else ""
    about = ""
    if row.apart_mm is not None:
        quarters = round(row.apart_mm / US_WIDTH / 2) * US_WIDTH * 2
        apart = show_size(quarters if units == "us" else row.apart_mm, units)
        about = f", about {apart} apart as is usual"
    large = ", as large as you choose" if row.width else ""
    if row.width_mm is not None:
        large = f", {show_size(row.width_mm, units)} across"
    return f"{row.number}{large}{about}{spare}"


def _wide_text(row: ToldNeed, units: System) -> str:
    """How wide a notion is bought, and whether that is only what is usual."""
    what = "thick" if row.round else "wide"
    if row.width_mm is None:
        return f", as {what} as you choose" if row.width else ""
    if row.width == "said":
        return f", {show_size(row.width_mm, units)} {what}"
    inch = units == "us" and row.width_mm > IN_EIGHTHS
    sold = round(row.width_mm / US_WIDTH) * US_WIDTH if inch else row.width_mm
    return f", {show_size(sold, units)} {what} as is usual"


def _cut_text(row: ToldNeed, lengths: list[str], units: System) -> str:
    """The lengths that are cut, finished, and what each takes besides for its ends."""
    several = sum(number or 0 for number, _ in row.cut_mm) > 1
    whole = f", {show_size(row.length_mm, units)} together" if several and row.length_mm else ""
    each = "on each for its" if several else "for its"
    ends = f", and {show_size(row.ends_mm, units)} more {each} ends" if row.ends_mm else ""
    tried = TRIED if row.tried else ""
    if row.less_mm:
        us = units == "us"
        less = (round(mm / QUARTER) * QUARTER if us else mm for mm in row.less_mm)
        tried = LESS.format(tried=tried, less=" or ".join(show_size(mm, units) for mm in less))
    return f"{', '.join(lengths)}{whole}{ends}{tried}"


def _sheet_text(least: float, units: System) -> str:
    """What is cut to pieces like a cloth, and no piece of it is said: its longest place."""
    much = f"no less than {show_size(least, units)}; " if least else ""
    return f"{much}write its pieces to have it reckoned"


def uncut_text(rows: Iterable[ToldNeed], units: System) -> str:
    """Short for a close sheet: what is cut like a cloth, of which no piece is said."""
    each = (
        f"{row.item} ({show_size(row.least_mm, units)} or more)" if row.least_mm else row.item
        for row in rows
    )
    return f"{', '.join(each)}: no piece is said"


def strip_text(row: ToldNeed, strip: ToldStrip, units: System) -> str:
    """Width of a bias strip, how much of it, and the square that gives it."""
    low, high = strip.width_mm
    wide = show_range("length", low, high, units)
    if not row.length_mm or strip.square_mm is None:
        return f"{wide} wide, on the bias; give its seams a length to have it reckoned"
    square = show("length", strip.square_mm, units)
    return (
        f"{row.buy} of it {wide} wide, joins counted: a square of {square} gives that, of a thin "
        "firm cloth; it is on top of the pieces above"
    )

"""How much of a notion is bought, in words: a number, or a length and what is cut from it."""

from __future__ import annotations

from collections.abc import Iterable

from advisor.answer.model.making import ToldNeed, ToldStrip
from advisor.units import System, show, show_range, show_size

IN_THE_SEAM = "in the seam"
NO_NUMBER = "count them, for how many is not said"
NO_LENGTH = "measure it, for no length is said"
LONGER = "or the next longer that the shop has"


def bought_text(row: ToldNeed, units: System) -> str:
    """What a shop is asked for: 9; 2.8 m (1 of 66 cm, 2 of 53 cm, and 25 mm on each for ends)."""
    sizes: dict[str, float] = {}
    for number, each in row.cut_mm:
        if number is not None and each is not None:
            size = show_size(each, units)
            sizes[size] = sizes.get(size, 0) + number
    lengths = [f"{number:.0f} of {size}" for size, number in sizes.items()]
    if row.number is not None:
        return f"{' and '.join(lengths)}, {row.buy or LONGER}" if lengths else f"{row.number}"
    if row.group != IN_THE_SEAM or row.strip:
        return ""
    if row.buy:
        return f"{row.buy} ({_cut_text(row, lengths, units)})" if lengths else row.buy
    if row.cut_mm:
        return NO_LENGTH
    return NO_NUMBER if row.least_mm is None else _sheet_text(row.least_mm, units)


def _cut_text(row: ToldNeed, lengths: list[str], units: System) -> str:
    """The lengths that are cut, finished, and what each takes besides for its ends."""
    several = sum(number or 0 for number, _ in row.cut_mm) > 1
    whole = f", {show_size(row.length_mm, units)} in all" if several and row.length_mm else ""
    each = "on each for its" if several else "for its"
    ends = f", and {show_size(row.ends_mm, units)} more {each} ends" if row.ends_mm else ""
    return f"{', '.join(lengths)}{whole}{ends}"


def _sheet_text(least: float, units: System) -> str:
    """What is cut to pieces like a cloth, and no piece of it is said: its longest place."""
    return f"no less than {show_size(least, units)}; write its pieces to have it reckoned"


def uncut_text(rows: Iterable[ToldNeed], units: System) -> str:
    """Short for a close sheet: what is cut like a cloth, of which no piece is said."""
    each = (
        f"{row.item} ({show_size(row.least_mm, units)} or more)" for row in rows if row.least_mm
    )
    return f"{', '.join(each)}: no piece is said"


def strip_text(row: ToldNeed, strip: ToldStrip, units: System) -> str:
    """Width of a bias strip, how much of it, and the square that gives it."""
    low, high = strip.width_mm
    wide = show_range("length", low, high, units)
    if not row.length_mm or strip.square_mm is None:
        return f"{wide} wide, on the bias; give its seams a length to have it reckoned"
    long = show("length", row.length_mm, units)
    square = show("length", strip.square_mm, units)
    return (
        f"{long} of it {wide} wide, joins counted: a square of {square} gives that, of a thin firm "
        "cloth; it is on top of the pieces above"
    )

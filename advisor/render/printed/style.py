"""How a printed page looks: black on white, no colour needed; the rules stand in `sheet.css`.

Sizes on paper are in points. The type of a close sheet is never under 8 point, so that it fits on
two pages; only the raised source numbers and the list of sources are smaller. A short sheet is
set larger than a long one. One face that many machines fall back on is far wider and taller than
the others at the same size, and so is brought to theirs.
"""

from __future__ import annotations

import re
from functools import cache
from pathlib import Path
from typing import Final

_SHEET: Final = Path(__file__).parents[1] / "templates" / "sheet.css"
PAPER: Final = {"metric": "@page{size:A4}", "us": "@page{size:letter;margin:6mm 7mm 7mm}"}
"""What a sheet is made of, by the units that it is printed in."""


@cache
def style() -> str:
    """Everything but the size of the paper."""
    return _SHEET.read_text(encoding="utf-8")


def number(before: str, unit: str = "") -> float:
    """The number that the style has between some of its own words, as a page is reckoned by it.

    Raises:
        ValueError: it has none there.
    """
    found = re.search(rf"{re.escape(before)}([\d.]+){unit}", style())
    if found is None:
        raise ValueError(f"sheet.css has no number after {before}")
    return float(found[1])

"""From pieces to the boxes that they fill on a cloth: upright, head to tail, or on the bias.

All of it is plain geometry (`derived`); lengths in any one unit. A rectangle on the true bias
reaches (width + length)/√2 both across the cloth and along it; how several of them nest is left
to the packing (`slanted`). A panel on the bias that may have a seam and is too long to lie whole
loses its two furthest corners, as far as the cloth is wide; they are cut elsewhere and joined on
along the grain (`common-practice`). Where those would be wider than the panel it is joined across.
"""

from __future__ import annotations

import math
from typing import Final

from advisor.craft.strip import Box

ROOT2: Final = math.sqrt(2)
STRIP_WIDE: Final = 200.0
"""A bias piece up to so wide, mm, may be joined of strips; a wider one has few seams (estimate)."""


def bias_span(width: float, length: float) -> float:
    """How far a rectangle on the true bias reaches, across the cloth and along it alike."""
    return (width + length) / ROOT2


def in_parts(width: float, length: float, seam: float, across: float) -> list[Box] | None:
    """A bias panel with seams of such an allowance in it, as it lies on a cloth so wide.

    Whole where it fits; less two corners, which are listed after it; else in equal parts joined
    across. None where no part of it would fit.
    """
    span = bias_span(width, length)
    if span <= across * (1 + 1e-9):
        return [Box(width, length, slanted=True)]
    short, long = sorted((width, length))
    deep = (span - across) / 2 + seam
    if deep * ROOT2 <= short and across > 2 * seam:
        corner = Box(deep + seam, 2 * (deep + seam))
        return [Box(width, length, slanted=True, within=across), corner, corner]
    room = across * ROOT2 - short - 2 * seam
    if room <= 0:
        return None
    number = math.ceil((long - 2 * seam) / room - 1e-9)
    part = (long - 2 * seam) / number + 2 * seam
    wide, high = (short, part) if width <= length else (part, short)
    return [Box(wide, high, slanted=True)] * number


def tapered(wide: float, narrow: float, length: float, count: int, across: float) -> list[Box]:
    """Tapered panels head to tail in rows as full as fit; the rest of them in a last row.

    A row of k reaches wide + (k − 1)(wide + narrow)/2: the panels are taken as symmetric.
    """
    step = (wide + narrow) / 2
    in_row = count if step <= 0 else int((across - wide) / step * (1 + 1e-9) + 1e-9) + 1
    in_row = max(1, min(count, in_row))
    rows, rest = divmod(count, in_row)
    found = [Box(wide + (in_row - 1) * step, length)] * rows
    return found + ([Box(wide + (rest - 1) * step, length)] if rest else [])

"""From pieces to the boxes that they fill on a cloth: upright, head to tail, or on the bias.

All of it is plain geometry (`derived`); lengths in any one unit. A rectangle on the true bias
reaches (width + length)/√2 both across the cloth and along it; how several of them nest is left
to the packing (`slanted`).
"""

from __future__ import annotations

import math
from typing import Final

from advisor.craft.strip import Box

ROOT2: Final = math.sqrt(2)


def bias_span(width: float, length: float) -> float:
    """How far a rectangle on the true bias reaches, across the cloth and along it alike."""
    return (width + length) / ROOT2


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

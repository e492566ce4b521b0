"""Through a stack: how much longer each layer of a roll is cut than the innermost.

Around a fold or roll of an angle each layer runs on its own circle. Its middle lies further out
than the middle of the innermost layer by half of both thicknesses and all that lies between, so it
is longer by angle × that distance, whatever the radius of the roll (`derived`). For the outermost
layer of two plies and what lies between this is the turn of cloth of `craft.allowance`.
Thicknesses and lengths are mm, as the cloth lies. Limits: layers that are pressed flat or trimmed
out of the edge take less; padding stitches and a rolled seam line come on top, so the cut is
proved on the form or over the hand before it is trimmed (`common-practice`).
"""

from __future__ import annotations

import math
from collections.abc import Sequence
from typing import Final

from advisor.craft import checks

SOURCES: Final[tuple[str, ...]] = ("derived", "common-practice")


def longer_by(inner_first_mm: Sequence[float], degrees: float = 180.0) -> tuple[float, ...]:
    """Extra length of each layer around a roll, mm, the innermost first (and 0 for it).

    Args:
        inner_first_mm: thickness of every layer from the inside of the roll outwards.
        degrees: how far it is rolled: 180 for a turned edge, a collar or a lapel that lies down.

    Raises:
        ValueError: no layer, or a thickness or an angle below nought.
    """
    checks.count("layers", len(inner_first_mm))
    angle = math.radians(checks.at_least("angle", degrees, 0))
    thick = [checks.at_least("thickness", each, 0) for each in inner_first_mm]
    middles = [sum(thick[:i]) + thick[i] / 2 for i in range(len(thick))]
    return tuple(angle * (middle - middles[0]) for middle in middles)

"""How stiff a cloth is, from a strip that reaches over the edge of a table.

A strip 25 mm wide is slid over the edge until its end has sunk to a slope of 41.5 degrees (8 down
for 9 along); the reach is then twice the bending length c (`astm-d1388`, `bs-3356`). The flexural
rigidity is G = M g c³, M the weight of the cloth, g gravity: what a metre of width resists
bending by, here in µN m; ISO 9073-7 leaves the unit open and says m c³ (`iso-9073-7`).

c of the heavy elastica: with t = s / c from the free end, theta'' = -t cos(theta), theta the slope
below the level, theta'(0) = 0; the edge is where theta = 0, and reach / c is t there (`derived`).
Solved that way twice the bending length is right at 41.5 degrees to 0.1 % (0.3 % in G); a short
form, (cos(a/2) / (8 tan a))^(1/3) for the slope a of the line from edge to end, gives c 1.9 % and G
5.8 % too much there, and G 15 % too much at 62 degrees (measured against a collocation solver of
boundary values, tests/published/test_stiffness.py). A reading of 1 mm in 40 moves G by 8 %.

Limits: a strip that curls or twists measures its edge, not its cloth; knits and piles scatter most;
warp, weft and bias differ. Layers that are only sewn together bend side by side, so their G add;
layers that are fused share the bending and come out stiffer than the sum, by how much nobody can
say here.
"""

from __future__ import annotations

import math
from collections.abc import Sequence
from functools import cache
from typing import Final

from advisor.craft import checks

SOURCES: Final[tuple[str, ...]] = ("astm-d1388", "bs-3356", "iso-9073-7", "derived")
GRAVITY: Final = 9.80665
#: The slope to which the end sinks; its tangent is 8 / 9 to a part in two hundred.
SLOPE: Final = 41.5
#: Where limp ends, soft ends and firm ends, bending length in mm (`estimate`).
LEVELS: Final[tuple[float, ...]] = (13.0, 20.0, 32.0)
#: From here a cloth stands away in gathers; below the first end it falls close (`estimate`).
CRISP: Final = LEVELS[1]
LEAST_SINK, MOST_SINK = 0.08, 0.9
_STEP: Final = 0.02


def bending_length(reach_mm: float, sinks_mm: float | None = None) -> float:
    """The bending length in mm of a strip that reaches so far over an edge.

    `sinks_mm` is how far its end lies below the edge; without it the end lies on the slope of 41.5
    degrees. Raises ValueError for a sinking from which nothing can be told.
    """
    reach = checks.above("reach", reach_mm)
    if sinks_mm is None:
        return reach / 2
    share = checks.above("sinking", sinks_mm) / reach
    if not LEAST_SINK <= share <= MOST_SINK:
        raise ValueError(
            f"the end has to sink by {LEAST_SINK:.0%} to {MOST_SINK:.0%} of the reach, "
            f"not {share:.0%}"
        )
    low, high = 1e-4, math.pi / 2 - 1e-6
    for _ in range(50):
        middle = (low + high) / 2
        low, high = (middle, high) if hanging(middle)[2] < share else (low, middle)
    return reach / hanging((low + high) / 2)[0]


@cache
def hanging(tip: float) -> tuple[float, float, float]:
    """Of a strip whose end points down by `tip` radians: reach / c, along / reach, down / reach."""
    theta, turn, t, along, down = tip, 0.0, 0.0, 0.0, 0.0
    while True:
        new, newer = _step(theta, turn, t, _STEP)
        if new <= 0:
            part = theta / (theta - new)
            return _ended(t + part * _STEP, along, down, theta, part)
        along += _STEP * (math.cos(theta) + math.cos(new)) / 2
        down += _STEP * (math.sin(theta) + math.sin(new)) / 2
        theta, turn, t = new, newer, t + _STEP


def _ended(
    whole: float, along: float, down: float, theta: float, part: float
) -> tuple[float, float, float]:
    last = part * _STEP
    along += last * (math.cos(theta) + 1) / 2
    down += last * math.sin(theta) / 2
    return whole, along / whole, down / whole


def _step(theta: float, turn: float, t: float, h: float) -> tuple[float, float]:
    """One step of the classical fourth order in t."""

    def slope(at: float, angle: float) -> float:
        return -at * math.cos(angle)

    k1, l1 = turn, slope(t, theta)
    k2, l2 = turn + h / 2 * l1, slope(t + h / 2, theta + h / 2 * k1)
    k3, l3 = turn + h / 2 * l2, slope(t + h / 2, theta + h / 2 * k2)
    k4, l4 = turn + h * l3, slope(t + h, theta + h * k3)
    return theta + h / 6 * (k1 + 2 * k2 + 2 * k3 + k4), turn + h / 6 * (l1 + 2 * l2 + 2 * l3 + l4)


def rigidity(weight_gsm: float, length_mm: float) -> float:
    """Flexural rigidity G = M g c³ in µN m of a cloth of so many g/m² and mm of bending length."""
    weight = checks.above("weight", weight_gsm) / 1000
    return weight * GRAVITY * (checks.above("bending length", length_mm) / 1000) ** 3 * 1e6


def together(layers: Sequence[tuple[float, float]]) -> float:
    """The bending length in mm of layers held as one, each as g/m² and its own bending length.

    Their rigidities add, as those of layers that may slide; fused ones come out stiffer.
    """
    weight = sum(w for w, _ in layers)
    stiff = sum(rigidity(w, c) for w, c in layers)
    return float((stiff / (weight / 1000 * GRAVITY * 1e6)) ** (1 / 3) * 1000)

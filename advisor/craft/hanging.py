"""What a garment weighs, and how hard it pulls where it hangs.

Mass (g) = area (m²) × weight (g/m²) for cloth, length (m) × mass per metre for what is sold by the
length, and length (km) × tex for thread, since a tex is a gram per kilometre (`derived`; tex by
ISO 1144). Force (N) = mass (kg) × 9.80665 m/s² (standard gravity), load (N/cm) = force / length
of the seam that carries it, as it hangs at rest: a step or a jump asks for some times as much.
Masses of notions are our own `estimate`. Limits: pieces count as they are cut, allowances and
corners in them, so a figure is somewhat high; a knit or a bias sags long before it gives way.
"""

from __future__ import annotations

import math
from typing import Final

from advisor.craft import checks

SOURCES: Final[tuple[str, ...]] = ("derived", "estimate")
GRAVITY: Final = 9.80665
#: What some notions weigh, g by the piece (estimate).
PIECE_G: Final[dict[str, float]] = {
    "metal-button": 3.0,
    "glass-button": 2.5,
    "natural-button": 1.5,
    "shell-button": 1.5,
    "horn-button": 2.0,
    "wood-button": 1.5,
    "covered-button": 1.5,
    "plastic-button": 1.0,
    "snap": 1.0,
    "hook-and-eye": 0.5,
    "hook-and-bar": 0.5,
    "shoulder-pad": 10.0,
}
#: What some notions weigh, g for a metre (estimate; boning a steel 7 × 0.3 mm by its density).
METRE_G: Final[dict[str, float]] = {
    "coil-zip": 12.0,
    "concealed-zip": 10.0,
    "moulded-zip": 25.0,
    "metal-zip": 40.0,
    "boning": 16.5,
    "braided-elastic": 6.0,
    "knitted-elastic": 8.0,
    "woven-elastic": 12.0,
    "clear-elastic": 6.0,
    "fold-over-elastic": 8.0,
    "hook-and-loop-tape": 18.0,
    "horsehair-braid": 5.0,
    "petersham": 8.0,
    "grosgrain-ribbon": 6.0,
    "satin-ribbon": 4.0,
    "velvet-ribbon": 8.0,
    "stay-tape": 1.5,
    "bias-binding": 4.0,
    "braid": 8.0,
    "ricrac": 4.0,
    "fringe": 25.0,
    "lace-edging": 4.0,
    "lace-insertion": 4.0,
    "drawcord": 8.0,
    "piping-cord": 5.0,
}
#: A place that carries more than so many metres of its own cloth would weigh sags (estimate).
MUCH_M: Final = 3.0
#: From what weight on a cloth is firm, g/m2, and what mass drags at no seam of it, g (estimate).
FIRM_G, LITTLE_G = 150.0, 400.0
#: So many where nobody knows what the cloth holds: three full long skirts of itself (estimate).
MUCH_UNKNOWN_M: Final = 10.0
#: The share of what a cloth holds below which a load in motion is nothing to it (estimate).
FELT: Final = 1 / 400
#: What a step or a jump asks for, as a multiple of the load at rest (estimate).
IN_MOTION: Final = 4.0


def cloth_mass(area_mm2: float, weight_g_m2: float) -> float:
    """Mass of a cloth in g from its area in mm² and its weight in g/m²."""
    area = checks.above("area", area_mm2)
    return area / 1e6 * checks.above("weight", weight_g_m2)


def thread_mass(length_m: float, tex: float) -> float:
    """Mass of a thread in g from its length in m and its tex."""
    length = checks.at_least("length of thread", length_m, 0.0)
    return length / 1000 * checks.above("tex", tex)


def ring_area(inner_mm: float, outer_mm: float, turn: float) -> float:
    """Area of a ring in mm² between two radii; `turn` is the share of a circle that it is."""
    inner = checks.at_least("inner radius", inner_mm, 0.0)
    outer = checks.above("width of the ring", outer_mm - inner) + inner
    return math.pi * (outer**2 - inner**2) * checks.above("turn", turn)


def force(mass_g: float) -> float:
    """What a mass in g pulls with, N."""
    return checks.at_least("mass", mass_g, 0.0) / 1000 * GRAVITY


def load(mass_g: float, length_mm: float) -> float:
    """What each cm of a seam of this length in mm carries, N/cm."""
    return force(mass_g) / (checks.above("length", length_mm) / 10)


def as_long_as(mass_g: float, length_mm: float, weight_g_m2: float) -> float:
    """How many m of the carrying cloth, as wide as the seam, would weigh as much as what hangs."""
    per_metre = checks.at_least("mass", mass_g, 0.0) / (checks.above("length", length_mm) / 1000)
    return per_metre / checks.above("weight", weight_g_m2)

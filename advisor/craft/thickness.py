"""How thick a stack is: as it lies, and pressed together under the foot.

Packing: t (mm) = W / (1000 ρ φ), W in g/m², ρ in g/cm³, φ the share of fibre in the cloth
(arithmetic, `derived`). Under the foot a stack is tested at φ = 0.55 (`design-choice`, from
a computed foot pressure about a hundred times the test pressure). The two thresholds on the
lift are ours (`design-choice`): no published share of the lift was found. Lift is only
what goes under; needle and pressure may limit sewing earlier.
"""

from __future__ import annotations

import math
from collections.abc import Sequence
from enum import StrEnum
from typing import Final

from msgspec import Struct

from advisor.craft import checks

SOURCES: Final[tuple[str, ...]] = ("derived", "design-choice")

FOOT_PACKING: Final = 0.55
WARN_SHARE: Final = 0.5
BLOCK_SHARE: Final = 0.75


class Structure(StrEnum):
    """What holds a cloth together, as far as its packing goes."""

    WOVEN = "woven"
    KNIT = "knit"
    FLEECE = "fleece"


USUAL_PACKING: Final[dict[Structure, tuple[float, float]]] = {
    Structure.WOVEN: (0.25, 0.45),
    Structure.KNIT: (0.15, 0.25),
    Structure.FLEECE: (0.03, 0.10),
}


class StackedCloth(Struct, frozen=True):
    """One cloth in a stack: thickness of a ply in mm, plies, and what is known of its fibre.

    Weight (g/m²) and density (g/cm³) may be missing; then the layer is taken not to give
    under the foot, which never makes it look thinner than it is.
    """

    thickness_mm: float
    plies: float = 1.0
    weight_g_m2: float | None = None
    density_g_cm3: float | None = None

    def __post_init__(self) -> None:
        checks.above("thickness of a cloth", self.thickness_mm)
        checks.at_least("plies", self.plies, 0)


def thickness_from_packing(weight_g_m2: float, density_g_cm3: float, packing: float) -> float:
    """Thickness of one ply in mm, t = W / (1000 ρ φ)."""
    weight = checks.above("weight", weight_g_m2)
    density = checks.above("density", density_g_cm3)
    if checks.above("packing", packing) > 1:
        raise ValueError(f"packing cannot exceed 1, a solid sheet: {packing:g}")
    return weight / (1000 * density * packing)


def least_thickness(weight_g_m2: float, density_g_cm3: float) -> float:
    """The thinnest in mm that a cloth can be: a solid sheet of its fibre, W / (1000 ρ)."""
    return thickness_from_packing(weight_g_m2, density_g_cm3, 1.0)


def as_it_lies(stack: Sequence[StackedCloth]) -> float:
    """Thickness of a stack in mm, nothing pressed: Σ plies × thickness."""
    return math.fsum(layer.plies * layer.thickness_mm for layer in stack)


def under_foot(stack: Sequence[StackedCloth], packing: float = FOOT_PACKING) -> float:
    """Thickness of a stack in mm under the foot: Σ plies × W / (1000 ρ φ).

    Pressing never thickens: a ply already denser than φ keeps its thickness.
    """
    return math.fsum(layer.plies * _pressed(layer, packing) for layer in stack)


def _pressed(layer: StackedCloth, packing: float) -> float:
    if layer.weight_g_m2 is None or layer.density_g_cm3 is None:
        return layer.thickness_mm
    solid = thickness_from_packing(layer.weight_g_m2, layer.density_g_cm3, packing)
    return min(layer.thickness_mm, solid)

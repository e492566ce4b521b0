"""Hard parts of a garment as the iron heats them: zip, button, hook, pin, yarn, bead."""

from __future__ import annotations

from msgspec import Struct
from msgspec.structs import replace

from advisor.heat.model.materials import Range

PART_LOSS = Range(8.0, 14.0, 25.0)  # W/(m2 K), estimate


class HardPart(Struct, frozen=True):
    """A hard part in the press: material as in burns, thickness mm, density g/cm3, J/(kg K).

    ``faces`` counts the sides that lose heat: 1 lying on cloth, 2 hanging free; ``loss`` is what
    each gives off, W/(m2 K).
    """

    name: str
    material: str
    thickness_mm: Range
    density: float
    specific_heat: float
    faces: int = 1
    loss: Range = PART_LOSS
    sources: tuple[str, ...] = ()


_STEEL = (7.85, 450.0, ("morton-hearle-2008", "ht-1-2-0"))
_BRASS = (8.53, 380.0, ("memory",))


def _part(
    name: str,
    material: str,
    thick: tuple[float, float, float],
    stuff: tuple[float, float, tuple[str, ...]],
) -> HardPart:
    """A part of the usual thickness as if solid (mm, memory; zips 2-3.5 mm over all)."""
    density, heat, sources = stuff
    return HardPart(name, material, Range(*thick), density, heat, sources=(*sources, "memory"))


PARTS = {
    "metal zip": _part("metal zip", "metal", (1.0, 1.5, 2.0), _BRASS),
    "aluminium zip": _part("aluminium zip", "metal", (1.0, 1.5, 2.0), (2.7, 880.0, ("ht-1-2-0",))),
    "moulded zip": _part("moulded zip", "plastic", (2.5, 3.0, 3.5), (1.41, 1470.0, ("memory",))),
    "coil zip": _part("coil zip", "plastic", (1.5, 2.0, 2.5), (1.39, 1200.0, ("ht-1-2-0",))),
    "metal button": _part("metal button", "metal", (1.0, 2.0, 3.0), _BRASS),
    "pin": replace(
        _part("pin", "metal", (0.25, 0.3, 0.4), _STEEL), loss=Range(15.0, 25.0, 45.0)
    ),  # wires of 0.5, 0.6 and 0.8 mm
    "hook": _part("hook", "metal", (0.8, 1.0, 1.5), _STEEL),
    "metal yarn": _part("metal yarn", "metal", (0.05, 0.1, 0.3), _STEEL),
    "glass bead": _part(
        "glass bead", "metal", (1.0, 2.0, 4.0), (2.5, 800.0, ("morton-hearle-2008",))
    ),
}

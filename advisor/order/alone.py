"""The parts of a garment that are put on by themselves, as a petticoat under its dress."""

from __future__ import annotations

from advisor.knowledge.model import Knowledge
from advisor.project.garment import Garment, GarmentPart


def parts_alone(garment: Garment, knowledge: Knowledge) -> frozenset[str]:
    """The parts that no place joins to another part: none of their cloths lies outside them.

    One part alone is the garment, so nothing stands beside it.
    """
    if len(garment.parts) < 2:
        return frozenset()
    kinds = {name: knowledge.entries[cloth.entry].kind for name, cloth in garment.cloths.items()}
    cloths = frozenset(name for name, kind in kinds.items() if kind == "cloth")
    return frozenset(
        part.name
        for part in garment.parts
        if (own := _own(part, garment) & cloths)
        and not any(seam.part != part.name and own & set(seam.cloths()) for seam in garment.seams)
    )


def _own(part: GarmentPart, garment: Garment) -> frozenset[str]:
    """What a part is made of: its layers, and what its places hold."""
    held = (name for seam in garment.seams if seam.part == part.name for name in seam.cloths())
    return frozenset((*part.layers, *held))

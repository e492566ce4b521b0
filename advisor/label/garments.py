"""Which parts of a project are worn by themselves, so that each has a label of its own."""

from __future__ import annotations

from typing import TYPE_CHECKING

from advisor.project.garmentparts import closes_round
from advisor.project.unjoined import parts_alone

if TYPE_CHECKING:
    from advisor.knowledge.model import Knowledge
    from advisor.project.garment import Garment

REST = "the rest"


def labels_of(garment: Garment, knowledge: Knowledge) -> str:
    """That each garment of a project has a label of its own; "" where it is one garment."""
    worn = worn_apart(garment, knowledge)
    own = "; ".join(f"{name} of {', '.join(cloths)}" for name, cloths in worn.items())
    told = (
        f"{len(worn)} garments, {own}: nothing joins them, so each gets a label of its own, with "
        "the fibres of its cloths"
    )
    whole = not all(cloth.detachable for cloth in garment.cloths.values())
    told += "; what the care below allows the whole, it allows each" if whole else ""
    return told if worn else ""


def worn_apart(garment: Garment, knowledge: Knowledge) -> dict[str, tuple[str, ...]]:
    """The cloths of each part that nothing joins to another and that closes by itself.

    Under `the rest` stand those of all other parts; empty where the project is one garment.
    """
    kinds = knowledge.places.kinds
    found = {
        name: _held(garment, knowledge, {name})
        for name in sorted(parts_alone(garment, knowledge))
        if any(closes_round(seam, kinds) for seam in garment.seams if seam.part == name)
    }
    others = {part.name for part in garment.parts} - found.keys()
    rest = {REST: _held(garment, knowledge, {"", *others})} if found and others else {}
    return found | rest


def _held(garment: Garment, knowledge: Knowledge, parts: set[str]) -> tuple[str, ...]:
    """The cloths that these parts are made of, as the project lists them."""
    held = {c for part in garment.parts if part.name in parts for c in part.layers}
    held |= {c for seam in garment.seams if seam.part in parts for c in seam.cloths()}
    kinds = {name: knowledge.entries[cloth.entry].kind for name, cloth in garment.cloths.items()}
    return tuple(name for name in garment.cloths if name in held and kinds[name] == "cloth")

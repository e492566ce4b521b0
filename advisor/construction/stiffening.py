"""How stiff cloths are that were measured, and what they make of a place: one held on another.

Only a strip that the maker let bend tells it; nothing is taken from what a cloth is called.
"""

from __future__ import annotations

from msgspec import Struct

from advisor.claims.glued import STIFFENS
from advisor.craft import stiffness
from advisor.knowledge.model import Knowledge
from advisor.project.garment import Cloth, Garment, Seam

BACKINGS = frozenset({"backing", "underlining", "interlining", "interfacing"})


class Stiffness(Struct, frozen=True):
    """Cloths of a place that were measured, their bending lengths in mm, and what they are as one.

    Attributes:
        lengths: by cloth.
        support: what is held on the face, and `face`; "" where the place holds nothing so.
        together: bending length of both as one, mm; None where a weight is not known.
        times: how many times as stiff as the face alone.
        fused: whether the glue makes it stiffer still.
        gathered: the measured cloth that is drawn up; "" where none is.
    """

    lengths: dict[str, float]
    face: str = ""
    support: str = ""
    together: float | None = None
    times: float = 1.0
    fused: bool = False
    gathered: str = ""
    sources: tuple[str, ...] = stiffness.SOURCES


def stiffness_of(seam: Seam, garment: Garment, knowledge: Knowledge) -> Stiffness | None:
    """What is known of the stiffness of a place; None where nothing was measured in it."""
    cloths = {name: garment.cloths[name] for name in seam.cloths()}
    lengths = {n: stiffness.bending_length(*c.overhang) for n, c in cloths.items() if c.overhang}
    if not lengths:
        return None
    full = max(seam.uses, key=lambda use: use.fullness)
    gathered = full.cloth if full.fullness > 1 and full.cloth in lengths else ""
    support = next((n for n in lengths if _supports(n, seam, cloths, knowledge)), "")
    face = next((n for n in lengths if n != support), "")
    if not (support and face):
        return Stiffness(lengths, gathered=gathered)
    fused = "fusible" in knowledge.entries[cloths[support].entry].kind
    weights = [cloths[name].weight for name in (face, support)]
    if None in weights:
        return Stiffness(lengths, face, support, fused=fused, gathered=gathered)
    heavy = [sum(w) / 2 for w in weights if w is not None]
    layers = list(zip(heavy, (lengths[face], lengths[support]), strict=True))
    alone, whole = stiffness.rigidity(*layers[0]), sum(stiffness.rigidity(*each) for each in layers)
    both = stiffness.together(layers)
    return Stiffness(lengths, face, support, both, whole / alone, fused, gathered)


def _supports(name: str, seam: Seam, cloths: dict[str, Cloth], knowledge: Knowledge) -> bool:
    """Whether a layer is held on another: an interfacing by its kind, or what a backing lays on."""
    if knowledge.entries[cloths[name].entry].kind in STIFFENS:
        return True
    return seam.place in BACKINGS and name != seam.uses[0].cloth

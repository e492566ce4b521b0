"""The parts of a garment that are put on by themselves, as a petticoat under its dress."""

from __future__ import annotations

from typing import TYPE_CHECKING

from advisor.project.ownband import worn_by_band
from advisor.project.placing import GATHERED, singular_words

if TYPE_CHECKING:
    from advisor.knowledge.model import Knowledge
    from advisor.project.garment import Garment, Seam

FRILLS, WAIST, BAND = "gathered-edge", "waist", "waistband"
"""What is drawn up on another cloth, but for a skirt: the same net on a sleeve joins no part. A
waistband is of its own part, whatever it is cut of."""
BOUND = "bound-edge"
"""Its strip, named last, is cut of the same cloth and joins no part to another."""
LINING = "lining"
"""A part of this name hangs in its garment, though nobody said where: it is put on by no one."""
SLEEVE, ARMHOLE = "sleeve", "armhole"
"""A sleeve that is drawn up at the armhole is no frill of its own, either."""


def parts_alone(garment: Garment, knowledge: Knowledge) -> frozenset[str]:
    """The parts that no place joins to another: what only they are made of meets nothing else.

    One part alone is the garment, so nothing stands beside it.
    """
    found = set()
    kinds = {name: knowledge.entries[cloth.entry].kind for name, cloth in garment.cloths.items()}
    held = {s.name: {n for n in s.cloths() if kinds.get(n) == "cloth"} for s in garment.seams}
    roles = knowledge.order.kinds
    waists, armholes = (
        tuple(map(singular_words, roles[kind].words if kind in roles else ()))
        for kind in (WAIST, ARMHOLE)
    )
    for part in garment.parts if len(garment.parts) > 1 else ():
        if LINING in singular_words(part.name):
            continue
        others = {c for other in garment.parts if other != part for c in other.layers}
        inside = [seam for seam in garment.seams if seam.part == part.name]
        layers = {n for n in part.layers if kinds.get(n) == "cloth"}
        own = ({c for seam in inside for c in held[seam.name]} | layers) - others
        outside = [seam for seam in garment.seams if seam not in inside]
        lines = (*waists, *(armholes if SLEEVE in singular_words(part.name) else ()))
        met = any(_joins(seam, held[seam.name] & own, lines) for seam in outside)
        met = met or any(_mixes(seam, held[seam.name], own) for seam in inside)
        if inside and own and not met:
            found.add(part.name)
    return frozenset(found) or worn_by_band(garment, knowledge)


def drawn_up(seam: Seam) -> tuple[str, ...]:
    """The cloths that are gathered or pleated into it; the last where none is told to be."""
    uses = [use.cloth for use in seam.uses if use.fullness > GATHERED]
    if not uses and seam.place == FRILLS:
        uses = [seam.uses[-1].cloth]
    return tuple(dict.fromkeys(uses))


def _joins(seam: Seam, shared: set[str], lines: tuple[tuple[str, ...], ...]) -> bool:
    """Whether a place holds a cloth of a part otherwise than as a frill or a strip of its own."""
    words = singular_words(seam.name)
    in_line = any(words[i : i + len(w)] == w for w in lines for i in range(len(words)))
    frill = seam.place == FRILLS and not in_line
    own = set(drawn_up(seam)) if frill else {seam.uses[-1].cloth} if seam.place == BOUND else set()
    return bool(shared) and not shared <= own


def _mixes(seam: Seam, cloths: set[str], own: set[str]) -> bool:
    """Whether a place of a part joins it to the cloth of another."""
    return bool(own & cloths) and bool(cloths - own) and seam.place != BAND

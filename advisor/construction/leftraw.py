"""Edges that nobody sews, and rows that no closer stitch may make stronger: skins, film, net."""

from __future__ import annotations

from typing import Final

from advisor.knowledge.model import Entry, Knowledge
from advisor.project.garment import Garment, Seam

RAW_METHOD: Final = "hem-left-raw"
KEEPS_HOLES: Final = frozenset({"skin", "film"})
"""Structures in which each hole of a needle takes strength away for good."""
LOOSE: Final = ("frays", "curls")
"""Traits of a cut edge that has to be turned or neatened."""


def left_as_cut(seam: Seam, garment: Garment, knowledge: Knowledge) -> bool:
    """Whether a hem is cut clean and left, so that nothing of it goes under a foot."""
    if seam.place != "hem" or seam.method:
        return seam.place == "hem" and seam.method == RAW_METHOD
    return all(_stays_cut(name, garment, knowledge) for name in seam.cloths())


def _stays_cut(name: str, garment: Garment, knowledge: Knowledge) -> bool:
    cloth = garment.cloths[name]
    entry = knowledge.entries[cloth.entry]
    plain = entry.structure in ("net", *KEEPS_HOLES) or entry.family == "nets"
    levels = (cloth.traits.get(t) or entry.traits.get(t, (0, 0)) for t in LOOSE)
    return entry.kind == "cloth" and plain and not any(level[1] for level in levels)


def keeps_holes(entry: Entry) -> bool:
    """Whether closer stitches make a line to tear along, and no stronger seam."""
    return entry.kind == "cloth" and entry.structure in KEEPS_HOLES

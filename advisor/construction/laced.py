"""Which holes a cord is laced through, and how long that makes it."""

from __future__ import annotations

from typing import Final

from advisor.construction.inrows import in_row, number_in
from advisor.craft import lacing
from advisor.knowledge.model import Knowledge
from advisor.project.garment import Garment, Seam

CORD, HOLE, LACING = "lacing-cord", "grommet", "lacing"
COUNTED_HOLES: Final = 4
"""From this number on what is counted at a lacing is its holes, and not lacings: estimate."""


def cords(seam: Seam, garment: Garment, knowledge: Knowledge) -> tuple[int, float | None]:
    """How many cords a place takes, and how long each is without its ends, mm.

    The holes are those of the place, else of the cloths that it lies on; where none are named, as
    many as usually stand along both its edges. The length is None where nothing tells it.
    """
    length = seam.facts.get("length")
    row = None if length is None else float(length)
    own = _holes(seam, garment, knowledge)
    if not own and seam.making.counted and seam.making.times >= COUNTED_HOLES:
        own = seam.making.times
    number = 1 if own else seam.making.times
    holes = own if seam.place == LACING else 0
    if not holes:
        near = (s for s in garment.seams if set(s.cloths()) & set(seam.cloths()))
        holes = sum(_holes(s, garment, knowledge) for s in near)
    if not holes and row is not None:
        holes = 2 * in_row(row, lacing.APART_MM)
    return number, lacing.cord_length(holes, row) / number if holes > 1 else None


def _holes(seam: Seam, garment: Garment, knowledge: Knowledge) -> int:
    entries = (knowledge.entries[garment.cloths[name].entry] for name in seam.cloths())
    return sum(number_in(seam, entry, garment) for entry in entries if entry.id == HOLE)

"""How many fastenings stand in a row of which only the length is said.

As many buttons as there are buttonholes, where these are counted; else as many as stand along it so
far apart as is usual, which the file of the notion says under `apart` (`common-practice`).
"""

from __future__ import annotations

import math
from typing import Final

from advisor.knowledge.model import Entry
from advisor.project.buttons import BUTTON, number_of_holes
from advisor.project.garment import Garment, Seam

APART: Final = "apart"
ONE: Final = 50.0
"""Up to this length a place has one fastening, not a row of them, mm: estimate."""
NEARLY: Final = 0.15
"""By how much of one space all spaces of a row together may be longer (estimate)."""
LACING: Final = "lacing"


def apart_of(entry: Entry) -> float | None:
    """How far apart the fastenings of a row usually are, mm; None of what stands in no row."""
    said = entry.facts.get(APART)
    return None if said is None else float(said["mm"])


def is_row(seam: Seam, entry: Entry) -> bool:
    """Whether a place holds a row of fastenings of which nobody says how many."""
    long = seam.long_mm > ONE
    return apart_of(entry) is not None and long and seam.making.times == 1


def holes_for(seam: Seam, entry: Entry, garment: Garment) -> int | None:
    """How many holes tell the number of the buttons of a place; None where none do."""
    return number_of_holes(seam, garment) if BUTTON in entry.id else None


def number_in(seam: Seam, entry: Entry, garment: Garment) -> int:
    """How many of a fastening a place takes; a lacing has two edges, each with a row of its own."""
    holes = None if seam.making.counted else holes_for(seam, entry, garment)
    if holes is not None:
        return holes
    apart = apart_of(entry)
    if apart is None or not is_row(seam, entry):
        return seam.making.times
    edges = 2 if seam.place == LACING else 1
    return edges * in_row(float(seam.facts["length"]), apart)


def in_row(length: float, apart: float) -> int:
    """How many stand along a length, one at each end, about so far apart (`derived`)."""
    return math.ceil(length / apart - NEARLY) + 1

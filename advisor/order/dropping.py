"""Which cloths lengthen while they hang: knits, the bias, and soft weaves whose grain gives.

A felted knit has been shrunk until its loops hold, so it drops no more (`common-practice`). A soft
weave of filament or viscose lets down on the straight grain too, which is why its own file asks for
a day on the hanger before the hem (`clothing-text-1916`, `memory`).
"""

from __future__ import annotations

from typing import Final

from advisor.knowledge.model import Entry

FELTED: Final = "felted"
SOFT: Final = frozenset({"silks", "satins", "sheers"})
"""Families of cloths with little in them that holds the straight grain."""
CREPE: Final = "crepe"


def lets_down(entry: Entry, grain: str) -> bool:
    """Whether a cloth that is cut so lengthens when it hangs for a day."""
    if grain == "bias":
        return True
    if entry.structure == "knit":
        return entry.weave != FELTED
    gives = entry.traits.get("grain holds", (0, 0))[1] > 0
    return entry.structure == "woven" and gives and (entry.family in SOFT or entry.weave == CREPE)

"""A seam whose load its backing carries: of a bodice that is laced, boned, or pulled hard.

What lies outside is then only its face, and the thread that holds is the backing's.
"""

from __future__ import annotations

from typing import Final

from advisor.knowledge.model import Knowledge
from advisor.project.garment import Garment, Seam

MOUNTED: Final = "underlining"
JOINS: Final = frozenset({"seam", "boned-seam"})
"""Kinds of place that hold pieces of a bodice together."""
LOADS: Final = frozenset({"bone", "busk", "grommet", "lacing-cord"})
"""Notions, by id or sort, that a bodice is drawn tight or held out with."""
FIRM_FROM: Final = 120.0
"""From this weight on a woven backing carries what its face does not, g/m²: estimate."""


def load_on_backing(seam: Seam, garment: Garment, knowledge: Knowledge) -> bool:
    """Whether mounted pieces are joined here under a strong load, said or told by their bones."""
    if seam.place not in JOINS or seam.facts.get("stress") == "low":
        return False
    mounts = [s.cloths() for s in garment.seams if s.place == MOUNTED]
    mine = [names for names in mounts if len(names) > 1 and names[0] in seam.cloths()]
    entries = {name: knowledge.entries[cloth.entry] for name, cloth in garment.cloths.items()}
    firm = (n for names in mine for n in names[1:] if entries[n].structure == "woven")
    if not any((garment.cloths[n].weight or (0.0,))[0] >= FIRM_FROM for n in firm):
        return False
    held = {name for names in mine for name in names}
    drawn = (
        {entries[name].id, entries[name].kind} & LOADS
        for other in garment.seams
        if held & set(other.cloths())
        for name in other.cloths()
    )
    return seam.facts.get("stress") == "high" or any(drawn)

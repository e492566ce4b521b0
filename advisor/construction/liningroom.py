"""Whether a skirt lining is wider than the waist that it hangs from, with nothing to take it in.

The width that it needs to step in has to go somewhere at the waist: into darts, soft pleats or
gathers. Lengths are mm.
"""

from __future__ import annotations

from collections.abc import Iterator
from typing import Final

from advisor.construction.disagreement import Disagreement, Figure
from advisor.knowledge import nouns
from advisor.knowledge.model import Knowledge
from advisor.project.garment import Garment, Seam
from advisor.project.headwords import speaks_of
from advisor.project.linings import unit_of

ROOM: Final = 1.2
"""A share that allowances and a little ease may add to the waist: estimate."""
TAKES_IN: Final = frozenset({"dart", "pleat"})


def too_wide_a_lining(garment: Garment, knowledge: Knowledge) -> Iterator[Disagreement]:
    """The pieces of a skirt lining against the waist that takes them in."""
    entries = {name: knowledge.entries[cloth.entry] for name, cloth in garment.cloths.items()}
    if any(speaks_of(seam.name, nouns.ABOVE) for seam in garment.seams):
        return
    hung = [seam for seam in garment.seams if unit_of(seam, entries) == "lining"]
    linings = {name for seam in hung for name in seam.cloths()}
    for seam in garment.seams:
        held = linings & set(seam.cloths())
        if len(held) == 1 and seam not in hung and speaks_of(seam.name, nouns.WAISTS):
            yield from _compared(seam, held.pop(), garment)


def _compared(seam: Seam, lining: str, garment: Garment) -> Iterator[Disagreement]:
    length = seam.facts.get("length")
    pieces = [
        p
        for p in garment.plan.pieces
        if p.cloth == lining and not speaks_of(p.name, nouns.SMALL) and p.tiers is None
    ]
    drawn = any(u.cloth == lining and u.fullness > 1 for s in garment.seams for u in s.uses)
    folded = any(lining in s.cloths() and s.place in TAKES_IN for s in garment.seams)
    has = sum(p.width * (p.number or 1) for p in pieces)
    if length is None or drawn or folded or has <= float(length) * ROOM:
        return
    yield Disagreement(
        "lining width",
        seam.name,
        (
            Figure(f"the pieces of {lining} are together", has),
            Figure(f"{seam.name} is said to be", float(length)),
        ),
    )

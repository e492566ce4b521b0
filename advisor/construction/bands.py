"""How long is cut what is stretched to its edge: a knit, as a band or a panel, and an elastic."""

from __future__ import annotations

from dataclasses import dataclass

from advisor.construction.elastics import ELASTIC
from advisor.construction.notionlist import cut_of, ends_of
from advisor.knowledge.model import Knowledge
from advisor.project.garment import Garment, Seam

CLEARLY_SHORT = 0.7
"""The share of a band's length below which a piece is only a part of it (estimate)."""


@dataclass(frozen=True, slots=True)
class Band:
    """A band of a knit or an elastic: its cloth, and its length without that of its ends, mm.

    `ends` is what the two ends of an elastic take besides; a knit has an allowance at each.
    `pieces` of one length make it up, where the project has more than one that is too short.
    """

    cloth: str
    length: float
    ends: float | None = None
    pieces: int = 1


def band_of(seam: Seam, garment: Garment, knowledge: Knowledge) -> Band | None:
    """What is stretched to an edge of a known length; None where there is nothing."""
    edge = seam.long_mm
    entries = {use.cloth: knowledge.entries[garment.cloths[use.cloth].entry] for use in seam.uses}
    drawn = (use for use in seam.uses if use.stretched > 1.0)
    use = next((use for use in drawn if entries[use.cloth].structure == "knit"), None)
    if use is None or not edge:
        return _elastic(seam, garment, knowledge)
    long = edge / use.stretched
    named = (p for p in garment.plan.pieces if p.name.casefold() == seam.name.casefold())
    short = (p for p in named if p.cloth == use.cloth and p.width < long * CLEARLY_SHORT)
    return Band(use.cloth, long, pieces=max((p.number or 1 for p in short), default=1))


def _elastic(seam: Seam, garment: Garment, knowledge: Knowledge) -> Band | None:
    """The elastic of a place of which the body or the stretch is said."""
    for use in seam.uses:
        entry = knowledge.entries[garment.cloths[use.cloth].entry]
        if entry.kind == ELASTIC and (use.body or use.stretched > 1):
            length = cut_of(seam, use.cloth, entry)
            return None if length is None else Band(use.cloth, length, ends_of(entry, garment))
    return None

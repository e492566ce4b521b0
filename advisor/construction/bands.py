"""How long a knit is cut that is stretched to its edge as a band."""

from __future__ import annotations

from dataclasses import dataclass

from advisor.construction.stack import folded_bands
from advisor.knowledge.model import Knowledge
from advisor.project.garment import Garment, Seam

CLEARLY_SHORT = 0.7
"""The share of a band's length below which a piece is only a part of it (estimate)."""


@dataclass(frozen=True, slots=True)
class Band:
    """A band of a knit: its cloth, and its length without the allowances of its ends, mm.

    `pieces` of one length make it up, where the project has more than one that is too short.
    """

    cloth: str
    length: float
    pieces: int = 1


def band_of(seam: Seam, garment: Garment, knowledge: Knowledge) -> Band | None:
    """The band that is stretched to an edge of a known length; None where there is none."""
    knits = folded_bands(seam, garment, knowledge)
    edge = float(seam.facts.get("length", 0.0))
    use = next((use for use in seam.uses if use.cloth in knits), None)
    if use is None or not edge:
        return None
    long = edge / use.stretched
    named = (p for p in garment.plan.pieces if p.name.casefold() == seam.name.casefold())
    short = (p for p in named if p.cloth == use.cloth and p.width < long * CLEARLY_SHORT)
    return Band(use.cloth, long, max((p.number or 1 for p in short), default=1))

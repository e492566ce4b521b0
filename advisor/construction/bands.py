"""How long a knit is cut that is stretched to its edge as a band."""

from __future__ import annotations

from dataclasses import dataclass

from advisor.construction.stack import folded_bands
from advisor.knowledge.model import Knowledge
from advisor.project.garment import Garment, Seam


@dataclass(frozen=True, slots=True)
class Band:
    """A band of a knit: its cloth, and its length without the allowances of its ends, mm."""

    cloth: str
    length: float


def band_of(seam: Seam, garment: Garment, knowledge: Knowledge) -> Band | None:
    """The band that is stretched to an edge of a known length; None where there is none."""
    knits = folded_bands(seam, garment, knowledge)
    edge = float(seam.facts.get("length", 0.0))
    use = next((use for use in seam.uses if use.cloth in knits), None)
    return None if use is None or not edge else Band(use.cloth, edge / use.stretched)

"""Tells a question after a notion by itself: no cloth is there yet that it is sewn to."""

from __future__ import annotations

from advisor.knowledge.model import Knowledge
from advisor.project.garment import Garment, Seam


def asked_by_itself(seam: Seam, garment: Garment, knowledge: Knowledge) -> bool:
    """Whether one notion is all that is asked about, so that no machine and no edge has a say."""
    names = set(seam.cloths())
    kinds = {knowledge.kind_of(garment.cloths[name].entry) for name in names}
    return garment.single and len(names) == 1 and "cloth" not in kinds

"""Bands at a lower edge: of another cloth they are joined there, and hemmed at their own edge."""

from __future__ import annotations

from collections.abc import Mapping

from advisor.knowledge.model import Entry
from advisor.knowledge.places import plain_word
from advisor.project.garment import Seam

BAND_BELOW = "its band of another cloth"
"""Why such a place is a seam, though a hem stands in its name."""
BANDS = frozenset({"band", "bands"})


def band_below(seam: Seam, about: Mapping[str, Entry]) -> bool:
    """Whether a band of another cloth is joined at what is called after a hem."""
    cloths = [e for e in about.values() if e.kind == "cloth" and e.family != "linings"]
    words = plain_word(seam.name).split()
    return words[-1] in BANDS and len(cloths) > 1 and "edge" not in seam.facts

"""Tabs that hang all along a waist, as below a bodice: they are joined there, and end it."""

from __future__ import annotations

from advisor.knowledge.places import plain_word
from advisor.project.garment import Seam

TABS, WAIST = frozenset({"tab", "tabs"}), "waist"


def hang_from_waist(seam: Seam) -> bool:
    """Whether a place is called after tabs that have a cloth of their own, joined to another."""
    words = plain_word(seam.name).split()
    own = [bool(TABS & set(plain_word(cloth).split())) for cloth in seam.cloths()]
    return WAIST in words and words[-1] in TABS and any(own) and not all(own)

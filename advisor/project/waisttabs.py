"""Tabs that hang all along a waist, and end what lies above; ties, by what they are called."""

from __future__ import annotations

from advisor.knowledge.places import plain_word
from advisor.project.garment import Seam

TABS, WAIST = frozenset({"tab", "tabs"}), "waist"
ROUND, MANY = frozenset({WAIST, "peplum", "doublet", "jerkin", "lower"}), 4
"""What else tabs round a waist are called after; so many go round it (estimate)."""
OF_A_TAB = frozenset({"edge", "edges", "piping"})
"""What of each tab a place is called after."""
TIED = frozenset({"tie", "ties", "lacing", "string", "strings", "drawstring"})
"""Words of what is tied, so that its ends hang out; a strap and a tab do not."""


def is_tied(name: str) -> bool:
    """Whether a place is called after ties, whatever they are made of."""
    return bool(TIED & set(plain_word(name).split()))


def hang_from_waist(seam: Seam) -> bool:
    """Whether a place is called after tabs that have a cloth of their own, joined to another."""
    words = plain_word(seam.name).split()
    own = [bool(TABS & set(plain_word(cloth).split())) for cloth in seam.cloths()]
    return WAIST in words and words[-1] in TABS and any(own) and not all(own)


def end_the_body(seam: Seam) -> bool:
    """Whether tabs hang all round below the waist, so that no other lower edge is left to hem."""
    words = set(plain_word(seam.name).split())
    around = bool(TABS & words) and words - TABS <= ROUND | OF_A_TAB
    return hang_from_waist(seam) or (around and seam.making.times >= MANY)

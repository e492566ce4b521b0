"""Tabs that hang all along a waist, and end what lies above; ties, by what they are called."""

from __future__ import annotations

from advisor.knowledge import nouns
from advisor.project.garment import Seam
from advisor.project.headwords import speaks_of, the_words

TAB, WAIST, MANY = "tab", "waist", 4
"""So many tabs go round a waist: estimate."""


def is_tied(name: str) -> bool:
    """Whether a place is called after ties, whatever they are made of."""
    return speaks_of(name, nouns.TIED)


def hang_from_waist(seam: Seam) -> bool:
    """Whether a place is called after tabs that have a cloth of their own, joined to another."""
    words = the_words(seam.name)
    own = [TAB in the_words(cloth) for cloth in seam.cloths()]
    return WAIST in words and words[-1] == TAB and any(own) and not all(own)


def end_the_body(seam: Seam) -> bool:
    """Whether tabs hang all round below the waist, so that no other lower edge is left to hem."""
    words = {*the_words(seam.name)}
    around = TAB in words and words <= nouns.OF_TABS
    return hang_from_waist(seam) or (around and seam.making.times >= MANY)

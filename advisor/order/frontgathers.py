"""What ends at the waist of a front: gathers below the bust, and an edge that laps over."""

from __future__ import annotations

from typing import Final

from advisor.knowledge import nouns
from advisor.project.garment import Garment, Seam
from advisor.project.headwords import speaks_of
from advisor.project.placing import singular_words

ONE_FRONT: Final = 300.0
"""Up to this length gathers lie on one front and not round the body, mm: estimate."""

WRAP, TO_WAIST = "wrap-edge", "wrap-to-waist"
"""The roles of an edge down a lapped front, and of one that the waist takes in."""
HIGH: Final = 700.0
"""Up to this length such an edge runs from the shoulder to the waist, mm: estimate."""
JOINS: Final = frozenset({"seam", "gathered-edge"})
BOTH_FRONTS: Final = 2


def on_the_fronts(seam: Seam) -> bool:
    """Whether gathers are called after the bust and lie on each front by itself."""
    short = 0 < seam.long_mm <= ONE_FRONT
    return speaks_of(seam.name, nouns.BUST) and (seam.making.times > 1 or short)


def ends_at_waist(edge: Seam, garment: Garment) -> bool:
    """Whether a lapped front is too short to run on over the waist, which then takes in its end.

    One that is written once runs down both fronts, and is halved.
    """
    others = [s for s in garment.seams if s.name != edge.name and s.place in JOINS]
    waist = any("waist" in singular_words(s.name) for s in others)
    pair = edge.making.times >= BOTH_FRONTS
    each = edge.long_mm if pair else edge.long_mm / BOTH_FRONTS
    words = ((s.long_mm, set(singular_words(s.name))) for s in others)
    skirts = [long for long, called in words if long and nouns.SKIRTS & called and "side" in called]
    return waist and each > 0 and (each <= min(skirts, default=0.0) or (pair and each <= HIGH))

"""Plackets: a slit that is cut into a piece, or the whole edge of a front."""

from __future__ import annotations

from advisor.knowledge.places import plain_word
from advisor.project.garment import Seam

LONG_SLIT = 400.0
"""From this length on a placket is a button band down the front, mm: estimate."""


def is_whole_front(seam: Seam) -> bool:
    """Whether a placket is no slit but the whole edge of a front, which nobody slashes."""
    long = seam.facts.get("edge") == "folded" or seam.long_mm >= LONG_SLIT
    return "placket" in plain_word(seam.name).split() and long

"""What is drawn up to a waist that stands in the file as well: both are one line, sewn once."""

from __future__ import annotations

from collections.abc import Iterable
from typing import Final

from advisor.project.garment import Seam
from advisor.project.placing import singular_words

GATHERS: Final = "gathered-edge"
NEAR: Final = 0.05
"""By which share two lengths of one line may differ: estimate."""
FULL: Final = 1.1
"""The fullness from which an edge is gathered: estimate."""


def waist_that_joins(gathers: Seam, seams: Iterable[Seam], phrases: Iterable[str]) -> Seam | None:
    """The plain waist that joins the cloths of a gathered edge along the same line.

    The waist is called by one of the `phrases`, is as long, holds each cloth that meets at the
    gathered edge, and holds flat what is drawn up there.
    """
    if gathers.place != GATHERS or "length" not in gathers.facts:
        return None
    named = [singular_words(p) for p in phrases]
    if any(_holds(gathers, phrase) for phrase in named):
        return None
    full = {use.cloth for use in gathers.uses if use.fullness > FULL}
    for other in seams:
        flat = {use.cloth for use in other.uses if use.fullness <= FULL}
        if other is gathers or not full or not full <= flat:
            continue
        together = set(gathers.cloths()) <= set(other.cloths()) and other.place == "seam"
        if together and as_long(gathers, other) and any(_holds(other, p) for p in named):
            return other
    return None


def _holds(seam: Seam, phrase: tuple[str, ...]) -> bool:
    words = singular_words(seam.name)
    return any(words[i : i + len(phrase)] == phrase for i in range(len(words)))


def as_long(one: Seam, other: Seam) -> bool:
    """Whether two places may be one line by their lengths, both said."""
    longest = max(one.long_mm, other.long_mm)
    return abs(one.long_mm - other.long_mm) <= NEAR * longest and "length" in other.facts

"""Which seam a zip lies in the line of, told by their names and by the cloth that they share."""

from __future__ import annotations

from advisor.knowledge import nouns
from advisor.project.garment import Seam
from advisor.project.headwords import speaks_of
from advisor.project.placing import singular_words

ZIP = "zip"
OUTSIDE = frozenset({"outside", "leg"})


def runs_into(seam: Seam, other: Seam) -> bool:
    """Whether the seam is sewn of the very cloth, and in the line, that the zip is set into."""
    return in_its_line(seam, other) and bool(set(seam.cloths()) & set(other.cloths()))


def in_its_line(seam: Seam, other: Seam) -> bool:
    """Whether the seam is called after the line that the zip lies in, of whatever cloth it is."""
    where = set(singular_words(other.name)) - nouns.ZIPPED
    aside = where <= nouns.HALVES and speaks_of(seam.name, nouns.BESIDE_THE_FRONT)
    return other.place == ZIP and bool(where) and where <= _lines(seam) and not aside


def _lines(seam: Seam) -> set[str]:
    """The words that say where a seam lies; the outer seam of a leg is its side."""
    words = set(singular_words(seam.name))
    return words | {"side"} if "outseam" in words or words >= OUTSIDE else words

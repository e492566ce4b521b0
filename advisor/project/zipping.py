"""Which seam a zip lies in the line of, told by their names and by the cloth that they share."""

from __future__ import annotations

from collections.abc import Sequence

from msgspec.structs import replace

from advisor.knowledge import nouns
from advisor.project.garment import Seam
from advisor.project.headwords import speaks_of, the_words

singular_words = the_words

ZIP = "zip"
BELOW = "below"
OTHER = {"left": "right", "right": "left"}
OUTSIDE = frozenset({"outside", "leg"})


def runs_into(seam: Seam, other: Seam) -> bool:
    """Whether the seam is sewn of the very cloth, and in the line, that the zip is set into."""
    return in_its_line(seam, other) and bool(set(seam.cloths()) & set(other.cloths()))


def in_its_line(seam: Seam, other: Seam) -> bool:
    """Whether the seam is called after the line that the zip lies in, of whatever cloth it is."""
    where = set(singular_words(other.name)) - nouns.ZIPPED
    aside = where <= nouns.HALVES and speaks_of(seam.name, nouns.BESIDE_THE_FRONT)
    if other.half and OTHER[other.half] in singular_words(seam.name):
        return False
    return other.place == ZIP and bool(where) and where <= _lines(seam) and not aside


def with_halves(seams: Sequence[Seam]) -> tuple[Seam, ...]:
    """The seams, each zip with the side on which it lies, where its own name does not say that.

    The seam that is called after what lies above it says so; else the one of two sides that a part
    has no seam for, because the zip closes it.
    """
    return tuple(replace(s, half=_half(s, seams)) if s.place == ZIP else s for s in seams)


def _half(zip_: Seam, seams: Sequence[Seam]) -> str:
    beside = [s for s in seams if s.place != ZIP and in_its_line(s, zip_)]
    below = [s for s in beside if is_below(s)]
    told = {half for s in below for half in _halves(s)}
    if not told:
        every = {frozenset(singular_words(s.name)) for s in beside}
        lone = [s for s in beside if _halves(s) and _opposite(s) not in every]
        told = {OTHER[half] for s in lone for half in _halves(s)}
    return next(iter(told)) if len(told) == 1 else ""


def is_below(seam: Seam) -> bool:
    """Whether a seam is called after what closes the garment above it."""
    words = {*singular_words(seam.name)}
    return BELOW in words and bool(nouns.CLOSED_ABOVE & words)


def _halves(seam: Seam) -> set[str]:
    found = OTHER.keys() & {*singular_words(seam.name)}
    return found if len(found) == 1 else set()


def _opposite(seam: Seam) -> frozenset[str]:
    """The words of the seam on the other side."""
    return frozenset(OTHER.get(word, word) for word in singular_words(seam.name))


def _lines(seam: Seam) -> set[str]:
    """The words that say where a seam lies; the outer seam of a leg is its side."""
    words = set(singular_words(seam.name))
    return words | {"side"} if "outseam" in words or words >= OUTSIDE else words

"""A tape over a zip that another place sets, which is no second zip; and trims by their names."""

from __future__ import annotations

from collections.abc import Collection, Mapping, Sequence

from advisor.knowledge import nouns
from advisor.knowledge.model import Entry
from advisor.project.garment import Seam
from advisor.project.headwords import the_words

ZIP, TRIMMED = "zip", "ribbon"
TAPES = frozenset({"tape", "trim"})
"""Kinds of notion that are stitched over the edge of another."""
OVER_ZIP = "the tape over the zip"


def tape_over_zip(seam: Seam, seams: Sequence[Seam], entries: Mapping[str, Entry]) -> bool:
    """Whether it holds a tape and a zip, is called after the tape, and another place sets that zip.

    A zip is sewn in once; the place that holds it with no tape, or is called after it, does that.
    """
    zips = {name for name in seam.cloths() if name in entries and entries[name].kind == ZIP}
    if not zips or not _taped(seam, entries) or not _called_after_tape(seam):
        return False
    setting = (s for s in seams if s.name != seam.name and zips & set(s.cloths()))
    return any(not (_taped(s, entries) and _called_after_tape(s)) for s in setting)


def sets_it(seam: Seam, places: Sequence[Seam]) -> bool:
    """Whether a place that holds a zip sets it, and is no tape over one that is set elsewhere."""
    return seam.place != TRIMMED or all(other.place == TRIMMED for other in places)


def _taped(seam: Seam, entries: Mapping[str, Entry]) -> bool:
    return any(name in entries and entries[name].kind in TAPES for name in seam.cloths())


def _called_after_tape(seam: Seam) -> bool:
    return bool(nouns.LAID_OVER & {*the_words(seam.name)[-1:]})


def trim_named(seam: Seam, about: Mapping[str, Entry], trims: Collection[str]) -> str:
    """The trimming of these kinds that a place is called after, wherever that lies; "" for none.

    `Pocket ric-rac` is no pocket, as the name ends in the trimming, or goes on with where it is.
    """
    words = the_words(seam.name)
    own = {n: e for n, e in about.items() if {e.id, e.kind} & {*trims}}
    return next((n for n, e in own.items() if any(_is(words, c) for c in (n, e.name, *e.also))), "")


def _is(words: tuple[str, ...], name: str) -> bool:
    at = next((i for i, word in enumerate(words) if i and word in nouns.LAID_ON), len(words))
    called = the_words(name)
    return bool(called) and words[:at][-len(called) :] == called

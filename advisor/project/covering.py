"""A tape that lies over the tape of a zip, which another place sets: it is no second zip."""

from __future__ import annotations

from collections.abc import Mapping, Sequence

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

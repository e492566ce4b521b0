"""Bands at a lower edge: of another cloth they are joined there, and hemmed at their own edge.

A rib stretched to the foot of a jacket is that edge itself, though it is called a waistband.
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping

from advisor.knowledge import nouns
from advisor.knowledge.model import Entry
from advisor.project.garment import Seam
from advisor.project.headwords import the_words

BAND_BELOW = "its band of another cloth"
"""Why such a place is a seam, though a hem stands in its name."""
BAND = "band"
ZIP = "zip"
FASTENED = frozenset({"button", "buttonhole", "hook", "snap", "buckle", "clasp", "hook-and-loop"})


def band_below(seam: Seam, about: Mapping[str, Entry]) -> bool:
    """Whether a band of another cloth is joined at what is called after a hem."""
    cloths = [e for e in about.values() if e.kind == "cloth" and e.family != "linings"]
    words = the_words(seam.name)
    return words[-1:] == (BAND,) and len(cloths) > 1 and "edge" not in seam.facts


def ends_the_body(seam: Seam, seams: Iterable[Seam]) -> bool:
    """Whether a band at the waist has something worn above it, and no skirt, legs or hem below."""
    if not nouns.LOW_BANDS & _words(seam) or ({"pocket"} | nouns.BELOW_A_WAIST) & _words(seam):
        return False
    others = [s for s in seams if s is not seam and s.part in ("", seam.part)]
    called = [_words(other) for other in others]
    hems = (s for s in others if s.facts.get("edge") == "hem" or s.place == "hem")
    below = any(nouns.BELOW_A_WAIST & words for words in called) or any(
        not (nouns.OFF_THE_BODY | {"lining"}) & _words(s) for s in hems
    )
    return any(nouns.SHOULDERED & words for words in called) and not below


def runs_to_the_zip(seam: Seam, seams: Iterable[Seam]) -> bool:
    """Whether a zip down the whole front closes a band as well, for nothing of its own does."""
    others = [s for s in seams if s is not seam and s.part in ("", seam.part)]
    zips = (_words(s) | {*the_words(" ".join(s.cloths()))} for s in others if s.place == ZIP)
    opens = any(nouns.OPENS & words and not nouns.NO_FRONT_ZIP & words for words in zips)
    own = (s for s in others if s.place in FASTENED and ({BAND} | nouns.LOW_BANDS) & _words(s))
    return opens and not any(own)


def _words(seam: Seam) -> set[str]:
    return {*the_words(seam.name)}

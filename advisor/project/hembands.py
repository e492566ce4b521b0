"""Bands at a lower edge: of another cloth they are joined there, and hemmed at their own edge.

A rib stretched to the foot of a jacket is that edge itself, though it is called a waistband.
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping

from advisor.knowledge.model import Entry
from advisor.knowledge.places import plain_word
from advisor.project.garment import Seam

BAND_BELOW = "its band of another cloth"
"""Why such a place is a seam, though a hem stands in its name."""
BANDS = frozenset({"band", "bands"})
AT_WAIST = frozenset({"waist", "waistband", "welt"})
"""Words of a rib that may be the lower edge of a jacket."""
WORN_ABOVE = frozenset({"shoulder", "raglan", "armhole", "yoke", "collar"})
BELOW = frozenset(
    {"crotch", "inseam", "rise", "tier", "skirt", "leg", "peplum", "petticoat", "underskirt"}
)
ZIP, PARTLY = "zip", frozenset({"half", "quarter", "neck", "chest", "pocket", "fly"})
"""Words of a zip that reaches no foot."""
FASTENED = frozenset({"button", "buttonhole", "hook", "snap", "buckle", "clasp", "hook-and-loop"})
ELSEWHERE = frozenset({"sleeve", "cuff", "wrist", "lining", "hood", "pocket", "frill", "flap"})
"""Words of hems that level no body."""


def band_below(seam: Seam, about: Mapping[str, Entry]) -> bool:
    """Whether a band of another cloth is joined at what is called after a hem."""
    cloths = [e for e in about.values() if e.kind == "cloth" and e.family != "linings"]
    words = plain_word(seam.name).split()
    return words[-1] in BANDS and len(cloths) > 1 and "edge" not in seam.facts


def ends_the_body(seam: Seam, seams: Iterable[Seam]) -> bool:
    """Whether a band at the waist has something worn above it, and no skirt, legs or hem below."""
    if not AT_WAIST & _words(seam) or ({"pocket"} | BELOW) & _words(seam):
        return False
    others = [s for s in seams if s is not seam and s.part in ("", seam.part)]
    called = [_words(other) for other in others]
    hems = (s for s in others if s.facts.get("edge") == "hem" or s.place == "hem")
    below = any(BELOW & words for words in called) or any(not ELSEWHERE & _words(s) for s in hems)
    return any(WORN_ABOVE & words for words in called) and not below


def runs_to_the_zip(seam: Seam, seams: Iterable[Seam]) -> bool:
    """Whether a zip down the whole front closes a band as well, for nothing of its own does."""
    others = [s for s in seams if s is not seam and s.part in ("", seam.part)]
    zips = (
        _words(s) | set(plain_word(" ".join(s.cloths())).split()) for s in others if s.place == ZIP
    )
    opens = any(("front" in words or "open" in words) and not PARTLY & words for words in zips)
    own = (s for s in others if s.place in FASTENED and ({"band"} | AT_WAIST) & _words(s))
    return opens and not any(own)


def _words(seam: Seam) -> set[str]:
    words = plain_word(seam.name).split()
    return {*words, *(word.removesuffix("s") for word in words)}

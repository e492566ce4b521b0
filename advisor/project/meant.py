"""What a name means where the measure of a place, its cloth or a place beside it says so."""

from __future__ import annotations

from collections.abc import Mapping

from advisor.knowledge import nouns
from advisor.knowledge.model import Entry
from advisor.project.garment import Seam
from advisor.project.headwords import speaks_of
from advisor.project.headwords import the_words as singular_words
from advisor.project.plackets import is_whole_front


def meant_by(words: str, seam: Seam, about: Mapping[str, Entry]) -> str:
    """The kind that its name says, where its measure or its cloth makes another of it."""
    if words == "placket" and is_whole_front(seam):
        return "front-band"
    if words == "set-in-pocket" and _slashed_under_a_flap(seam):
        return "welt-pocket"
    if words == "bow" and speaks_of(seam.name, nouns.COLLARED):
        return ""  # it is tied, and its neck takes it in as a collar
    if words == "collar" and _canvas_alone(seam, about):
        return "canvas"
    if words == "neckband" and not any(e.structure == "knit" for e in about.values()):
        return "collar"  # a woven band stretches onto nothing: it takes the neck in like a stand
    return words


def _slashed_under_a_flap(seam: Seam) -> bool:
    """Whether it is a pocket cut below a flap, and not one in a seam, nor its bag."""
    words = set(singular_words(seam.name))
    crossed = {word for name in seam.making.crosses for word in singular_words(name)}
    return "flap" in words and not words & nouns.NO_SLIT and "side" not in crossed


def _canvas_alone(seam: Seam, about: Mapping[str, Entry]) -> bool:
    """Whether it is the under collar with its canvas: that is padded, and set to nothing yet."""
    kinds = [about[name].kind for name in seam.cloths() if name in about]
    return kinds.count("cloth") == 1 and "canvas" in kinds

"""A waist that is told in two halves, of which one is called after its pleats."""

from __future__ import annotations

from collections.abc import Sequence
from typing import Final

from advisor.knowledge import nouns
from advisor.project.garment import Seam
from advisor.project.headwords import the_words

WAIST: Final = "waist"
OTHER_HALF: Final = "the other half of the waist"
PAIR: Final = 2


def half_a_waist(seam: Seam, seams: Sequence[Seam]) -> bool:
    """Whether pleats of two layers are half of a waist: another place joins the other half.

    They are laid in one layer and sewn to the other; pleats alone would leave the halves apart.
    """
    own = nouns.HALVES & {*the_words(seam.name)}
    if WAIST not in the_words(seam.name) or not own or len(seam.uses) != PAIR:
        return False
    others = [{*the_words(s.name)} for s in seams if s is not seam and len(s.uses) >= PAIR]
    return any(WAIST in o and bool(nouns.HALVES & o - own) for o in others)

"""A collar that ends in ties, told as two places: a long seam makes it, the neck sets it on."""

from __future__ import annotations

from typing import TYPE_CHECKING

from advisor.knowledge import nouns
from advisor.project.headwords import the_words

if TYPE_CHECKING:
    from advisor.project.garment import Garment, Seam

FACED, COLLAR, NECK = "faced-edge", "collar", "neck"


def makes_up_a_collar(seam: Seam, garment: Garment) -> bool:
    """Whether a turned edge is the outer edge of the tied collar that some other place sets on.

    The place at the neck says so, or a piece does that is cut of its cloth.
    """
    tied = nouns.TIE_COLLARS & set(the_words(seam.name))
    if seam.place != FACED or not tied:
        return False
    sets = [s for s in garment.seams if s.place == COLLAR and s.part == seam.part]
    sets = [s for s in sets if set(seam.cloths()) & set(s.cloths())]
    pieces = (set(the_words(p.name)) for p in garment.plan.pieces if p.cloth in seam.cloths())
    cut = any(nouns.TIE_COLLARS & words and words & {COLLAR, NECK} for words in pieces)
    return any(cut or nouns.TIE_COLLARS & set(the_words(s.name)) for s in sets)

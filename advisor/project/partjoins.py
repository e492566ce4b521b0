"""A seam that joins what hangs from a waist to what stands above it, told by the parts it joins."""

from __future__ import annotations

from advisor.knowledge import nouns
from advisor.knowledge.places import PLAIN
from advisor.project.garment import Garment, Seam
from advisor.project.placing import singular_words


def hangs_a_part(seam: Seam, garment: Garment) -> bool:
    """Whether a plain seam holds a cloth that only a part below is cut of, and one of a part above.

    It is the waist then, whatever it is called, and whichever part its name stands for.
    """
    found = set()
    for part in garment.parts if seam.place == PLAIN else ():
        others = {n for other in garment.parts if other is not part for n in other.layers}
        words = set(singular_words(part.name))
        if set(part.layers) & set(seam.cloths()) - others - set(part.separate):
            found |= (
                {"below"}
                if nouns.HUNG_PARTS & words
                else {"above"}
                if nouns.BODICES & words
                else set()
            )
    return len(found) > 1

"""Halves of a shawl collar that no place joins: it is cut in two, and meets at centre back."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Final

from advisor.construction.disagreement import Disagreement
from advisor.knowledge import nouns
from advisor.project.garment import Garment
from advisor.project.placing import singular_words

HALVES: Final = 2


def unjoined_halves(garment: Garment) -> Iterator[Disagreement]:
    """Each piece of a shawl collar that is cut twice of one cloth, where no seam joins the two."""
    names = [set(singular_words(seam.name)) for seam in garment.seams]
    if not any(words >= nouns.SHAWL for words in names):
        return
    joined = {
        cloth
        for seam, words in zip(garment.seams, names, strict=True)
        if nouns.COLLARS & words and nouns.MIDDLE & words
        for cloth in seam.cloths()
    }
    for piece in garment.plan.pieces:
        ours = nouns.COLLARS & set(singular_words(piece.name))
        if ours and piece.number == HALVES and piece.cloth not in joined:
            text = (
                f"is cut of {piece.cloth} in two halves, and no place joins them: write a seam "
                f"such as '{piece.name} centre back', which comes before the neck"
            )
            yield Disagreement("halves", piece.name, (), text)

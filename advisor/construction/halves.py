"""Pieces that no place joins: halves of a shawl collar, widths of a skirt with one hem."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Final

from advisor.construction.disagreement import Disagreement
from advisor.knowledge import nouns
from advisor.project.garment import Garment, Seam
from advisor.project.headwords import speaks_of
from advisor.project.placing import singular_words

HALVES: Final = 2
HEM: Final = "hem"
CLOSING: Final = frozenset({"seam", "boned-seam", "zip", "placket", "lining-seam", "vent"})
"""Kinds of place that may close a skirt down its length."""
NEARLY: Final = 1.1
"""By so much a hem may be longer than the one piece that it runs along (estimate)."""


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


def unjoined_widths(garment: Garment) -> Iterator[Disagreement]:
    """Each hem that runs over several pieces of its cloth, where no seam closes one to the next."""
    for hem in garment.seams:
        cloths = set(hem.cloths())
        long = float(hem.facts.get("length") or 0)
        if hem.place != HEM or len(cloths) != 1 or hem.making.times > 1 or not long:
            continue
        (cloth,) = cloths
        pieces = [p for p in garment.plan.pieces if p.cloth == cloth and not p.joined]
        several = sum(p.number or 1 for p in pieces) >= HALVES and len(pieces) == 1
        wide = max((p.width * p.fullness for p in pieces), default=0.0)
        if several and long > wide * NEARLY and not any(_closes(s, cloth) for s in garment.seams):
            name = pieces[0].name
            text = (
                f"is one edge of {pieces[0].number} pieces of {cloth}, and no place joins them: "
                f"write a seam such as '{name} side', layers [{cloth}, {cloth}], or 'times' where "
                "each hangs by itself"
            )
            yield Disagreement("widths", hem.name, (), text)


def _closes(seam: Seam, cloth: str) -> bool:
    """Whether a place joins a cloth lengthwise to what lies beside it."""
    across = speaks_of(seam.name, nouns.WAISTS) or any(use.fullness > 1 for use in seam.uses)
    return cloth in seam.cloths() and seam.place in CLOSING and not across

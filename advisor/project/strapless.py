"""The top edge of a bodice that nothing holds up: no shoulder, strap, sleeve or collar.

It hangs from nothing, so what keeps it against the body is a stay along it and one round the waist.
"""

from __future__ import annotations

from typing import Final

from advisor.knowledge import nouns
from advisor.project.garment import Garment, Seam
from advisor.project.headwords import speaks_of
from advisor.project.placing import singular_words

EDGES: Final = frozenset({"faced-edge", "bound-edge"})
"""Kinds of an edge that is sewn flat; elastic holds itself."""
IN_A_BODICE: Final = frozenset({"boning", "boned-seam", "cup"})


def strapless(seam: Seam, garment: Garment) -> bool:
    """Whether a place is the top edge of a bodice that hangs from nothing."""
    words = {w for other in garment.seams for w in singular_words(f"{other.name} {other.part}")}
    boned = any(other.place in IN_A_BODICE for other in garment.seams)
    return (
        seam.place in EDGES
        and speaks_of(seam.name, nouns.UPPER)
        and not words & nouns.HELD_UP
        and (boned or bool(words & nouns.STRAPLESS_BODICE))
    )

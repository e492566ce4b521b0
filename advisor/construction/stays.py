"""Which seams another place of the garment already stays, so that nothing is laid there twice."""

from __future__ import annotations

from typing import Final

from advisor.project.garment import Garment, Seam
from advisor.project.placing import singular_words

STAY_TAPE: Final = "stay-tape"


def taped_elsewhere(seam: Seam, garment: Garment) -> bool:
    """Whether a place of its own lays the tape of a seam, by its name and what they share."""
    named = set(singular_words(seam.name))
    return any(
        other.place == STAY_TAPE
        and other.name != seam.name
        and named <= set(singular_words(other.name))
        and bool(set(seam.cloths()) & set(other.cloths()))
        for other in garment.seams
    )

"""Which seams another place of the garment already stays, so that nothing is laid there twice."""

from __future__ import annotations

from typing import TYPE_CHECKING, Final

from advisor.claims.collect import Place
from advisor.project.garment import Garment, Seam
from advisor.project.placing import singular_words

if TYPE_CHECKING:
    from advisor.claims.combine import Verdict

STAY_TAPE: Final = "stay-tape"
SUPPORT: Final = "seam.support"


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


def stayed_once(garment: Garment, verdicts: dict[Place, dict[str, Verdict]]) -> None:
    """Advise no stay in a seam that a place of its own stays: it would have no step."""
    for seam in garment.seams:
        if taped_elsewhere(seam, garment):
            verdicts.get(Place("seam", seam.name), {}).pop(SUPPORT, None)

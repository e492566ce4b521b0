"""Which seams another place of the garment already stays, so that nothing is laid there twice."""

from __future__ import annotations

from collections.abc import Mapping
from typing import TYPE_CHECKING, Final

from advisor.claims.collect import Place
from advisor.construction.canvassed import stayed_by_backing
from advisor.knowledge.model import Entry
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


def stayed_once(
    garment: Garment, verdicts: dict[Place, dict[str, Verdict]], entries: Mapping[str, Entry]
) -> None:
    """Advise no stay in a seam that a tape of its own stays, or a firm cloth behind its pieces."""
    about = {name: entries[cloth.entry] for name, cloth in garment.cloths.items()}
    for seam in garment.seams:
        said = any(aspect == SUPPORT for aspect, _ in seam.choices)
        backed = not said and stayed_by_backing(seam, garment, about)
        if backed or taped_elsewhere(seam, garment):
            verdicts.get(Place("seam", seam.name), {}).pop(SUPPORT, None)

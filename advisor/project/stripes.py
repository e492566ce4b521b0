"""A stripe of cloth down a leg: sewn into the seam there, or laid over that when it is closed."""

from __future__ import annotations

from typing import TYPE_CHECKING, Final

from advisor.knowledge import nouns
from advisor.project.headwords import the_words

if TYPE_CHECKING:
    from advisor.project.garment import Garment, Seam

STRIPE: Final = "side-stripe"
LAID: Final = frozenset({"ribbon", "applique"})


def caught_in_its_seam(stripe: Seam, garment: Garment) -> bool:
    """Whether the seam beside it holds the stripe among its layers, so that it goes on before.

    A braid that lies over the closed seam is no layer of that.
    """
    if stripe.place not in LAID:
        return False
    own = stripe_of(stripe, garment)
    return any(
        nouns.OUTER_LEG & set(the_words(seam.name)) and own & set(seam.cloths())
        for seam in garment.seams
        if seam is not stripe and seam.place not in LAID and seam.part == stripe.part
    )


def stripe_of(stripe: Seam, garment: Garment) -> set[str]:
    """The cloth that is laid on: no place is made of it without the one that it lies on."""
    own = set()
    for name in stripe.cloths():
        ground = set(stripe.cloths()) - {name}
        held = [set(seam.cloths()) for seam in garment.seams if name in seam.cloths()]
        if ground and all(ground & cloths for cloths in held):
            own.add(name)
    return own if len(own) < len(set(stripe.cloths())) else set()

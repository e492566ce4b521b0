"""The two seams of a leg: where one is felled and the other is not, the felled one lies flat.

No machine fells a seam inside a closed leg. So the felled seam is sewn while the leg still lies
open, whichever of the two it is, and the plain one closes the leg after it.
"""

from __future__ import annotations

from advisor.order.kinds import SeamPlace, related

LEG = frozenset({"inseam", "side"})
"""The roles of the two seams of a leg."""
FELLED, STRIPE = "felled", "side-stripe"


def felled(place: SeamPlace) -> bool:
    """Whether a seam is folded over its own allowance and stitched down flat."""
    return FELLED in place.method.fits.get("seam", ())


def shuts_in_a_stripe(place: SeamPlace, other: SeamPlace) -> bool:
    """Whether it closes a leg along whose other seam a braid is laid on, flat, before that."""
    return place.role.id == "inseam" and other.role.id == STRIPE and related(place, other)


def closes_the_tube(place: SeamPlace, other: SeamPlace) -> bool:
    """Whether a seam of a leg is sewn once the other one is felled."""
    both = {place.role.id, other.role.id} == LEG
    return both and felled(other) and not felled(place) and related(place, other)

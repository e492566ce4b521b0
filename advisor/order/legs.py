"""The seams of legs: where one is felled and the other is not, the felled one lies flat.

No machine fells a seam inside a closed leg. So the felled seam is sewn while the leg still lies
open, whichever of the two it is, and the plain one closes the leg after it.
"""

from __future__ import annotations

from collections.abc import Sequence

from msgspec.structs import replace

from advisor.order.kinds import SeamPlace, related

LEG = frozenset({"inseam", "side"})
"""The roles of the two seams of a leg."""
FELLED, STRIPE = "felled", "side-stripe"
CASING, CROTCH = "casing", "crotch"


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


def with_channels_over_seats(places: Sequence[SeamPlace]) -> tuple[SeamPlace, ...]:
    """The places, no side of a leg left open for a channel that runs over the seat behind.

    The seat is closed once the legs are, so the ends of the elastic lie over sides that are closed.
    """
    seats = [p for p in places if p.role.id == CROTCH and p.unit != "lining"]

    def closed(place: SeamPlace) -> bool:
        channel = place.kind.id == CASING and bool(place.method.crossed_by)
        return channel and any(related(place, seat) for seat in seats)

    kept = (replace(p.method, crossed_by=()) if closed(p) else p.method for p in places)
    return tuple(replace(p, method=m) for p, m in zip(places, kept, strict=True))

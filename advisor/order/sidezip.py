"""Two sides of a bodice, of which a concealed zip leaves one open, above a skirt that is round.

Where front and back of the skirt hang open at the side like those of the bodice, the waist is
joined flat and both sides are closed afterwards. A skirt whose own seams are closed by then is a
ring: the other side of the bodice is closed before it is joined, and one stays open for the zip.
"""

from __future__ import annotations

from collections.abc import Sequence
from typing import TYPE_CHECKING

from msgspec.structs import replace

from advisor.project.zipping import runs_into

if TYPE_CHECKING:
    from advisor.order.kinds import SeamPlace

HIDDEN, SIDE, WAIST, SEAM, LINING = "concealed-zip", "side", "waist", "seam", "lining"
JOINED = frozenset({SEAM, "gathered-edge"})
PAIR = 2


def with_side_open(places: tuple[SeamPlace, ...]) -> tuple[SeamPlace, ...]:
    """The places, sides of which one waits marked so, and the waist that runs over the other."""
    zips = [p for p in places if p.role.id == HIDDEN and _above_a_ring(p, places)]
    open_ = {p.name for p in places if any(_one_waits(p, zip_) for zip_ in zips)}
    if not open_:
        return places
    return tuple(_marked(p, open_) for p in places)


def _marked(place: SeamPlace, open_: set[str]) -> SeamPlace:
    if place.name in open_:
        return replace(place, one_waits=True)
    if place.role.id != WAIST or SIDE in place.role.crosses:
        return place
    return replace(place, role=replace(place.role, crosses=(*place.role.crosses, SIDE)))


def _one_waits(side: SeamPlace, zip_: SeamPlace) -> bool:
    pair = side.role.id == SIDE and side.kind.id == SEAM and side.seam.making.times >= PAIR
    return pair and runs_into(side.seam, zip_.seam)


def _above_a_ring(zip_: SeamPlace, places: Sequence[SeamPlace]) -> bool:
    """Whether the waist below it takes in a cloth with seams of its own, in no line of the zip."""
    waists = [p for p in places if p.role.id == WAIST and p.kind.id in JOINED]
    beside = (w for w in waists if set(w.cloths) & set(zip_.cloths))
    below = {cloth for w in beside for cloth in w.cloths} - set(zip_.cloths)
    rings = (p for p in places if p.kind.id == SEAM and p.unit != LINING)
    return any(p.cloths and set(p.cloths) <= below for p in rings)


def side_left_open(zip_: SeamPlace, places: Sequence[SeamPlace]) -> SeamPlace | None:
    """The sides of which one stays open for this zip; None where none does."""
    hidden = zip_.role.id == HIDDEN
    return next((p for p in places if hidden and p.one_waits and _one_waits(p, zip_)), None)

"""A seam that joins two rings, as a bodice to trunks: each is closed before, or neither is.

The pieces that it joins tell: they are those of two seams that each close a ring by themselves.
"""

from __future__ import annotations

from itertools import combinations
from typing import Final

from msgspec.structs import replace

from advisor.knowledge.ordering import SeamKind
from advisor.order.kinds import SeamPlace

PLAIN, WAIST = "plain", "waist"
STAGE: Final = 455
"""After the sides that it runs over, and still among what is tried on."""


def with_rings_closed(
    places: tuple[SeamPlace, ...], roles: dict[str, SeamKind]
) -> tuple[SeamPlace, ...]:
    """The places; a seam of two rings runs over the sides of both, and lies flat no more."""
    waist = roles.get(WAIST)
    if waist is None:
        return places
    return tuple(_round(p, waist) if _joins_rings(p, places) else p for p in places)


def _round(place: SeamPlace, waist: SeamKind) -> SeamPlace:
    role = replace(place.role, flat=False, fitted=True, stage=STAGE, crosses=waist.crosses)
    return replace(place, role=role)


def _joins_rings(place: SeamPlace, places: tuple[SeamPlace, ...]) -> bool:
    if place.role.id != PLAIN or place.kind.family != "seam" or place.panels is None:
        return False
    closing = [p.panels for p in places if p.role.closes and p.panels and p.panels < place.panels]
    return any(one.isdisjoint(other) for one, other in combinations(closing, 2))

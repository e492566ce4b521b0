"""A lining that ends at a yoke: it is sewn into the seam of that, and reaches no shoulder."""

from __future__ import annotations

from collections.abc import Iterable
from typing import Final

from advisor.order.kinds import SeamPlace

SHOULDER: Final = "shoulder"
JOINED: Final = "lining-seam"
SEWN: Final = frozenset({"seam", "yoke"})
"""Kinds of seam into which a lining may be sewn afterwards."""


def below_the_shoulders(place: SeamPlace, places: Iterable[SeamPlace]) -> bool:
    """Whether no shoulder of the shell holds a cloth of this place: it ends at a piece above it."""
    shoulders = [p for p in places if p.role.id == SHOULDER and p.unit != "lining"]
    return bool(shoulders) and not any(set(p.cloths) & set(place.cloths) for p in shoulders)


def ends_at_a_yoke(lining: SeamPlace, places: Iterable[SeamPlace]) -> bool:
    """Whether a lining is sewn into a seam that joins two cloths of its shell."""
    return lining.kind.id == JOINED and any(sewn_into(lining, p) for p in places)


def sewn_into(lining: SeamPlace, seam: SeamPlace) -> bool:
    """Whether the layers of a lining's seam say that it runs along this seam of the shell."""
    joined = set(seam.cloths)
    along = len(joined) > 1 and joined < set(lining.cloths)
    return lining.kind.id == JOINED and seam.kind.id in SEWN and seam.unit == "shell" and along


def lined_later(seam: SeamPlace, places: Iterable[SeamPlace]) -> bool:
    """Whether a lining is still sewn into a seam, so that its edges are left whole till then."""
    return any(sewn_into(p, seam) for p in places)

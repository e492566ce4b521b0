"""A band or a seam along a whole edge that takes in shell and lining together, as a shawl band.

Both are made up and hung in each other before it: a lining that is caught there as loose pieces
can be closed by no machine afterwards, and the garment is tried on in its shell alone.
"""

from __future__ import annotations

from collections.abc import Sequence
from typing import Final

from advisor.order.kinds import SeamPlace

ALONG_AN_EDGE: Final = 1000.0
"""From this length on a seam of both runs round an edge and not across a piece, mm: estimate."""
KINDS: Final = frozenset({"seam", "front-band", "yoke"})
CLOSING: Final = frozenset(
    {"side", "side-and-sleeve", "underarm", "armhole", "shoulder", "centre", "panel", "waist"}
)
"""Roles of the seams by which shell or lining are made up."""


def takes_whole_lining(place: SeamPlace, places: Sequence[SeamPlace]) -> bool:
    """Whether a band takes in a lining that has sides of its own, along a whole edge."""
    along = place.unit == "both" and place.kind.id in KINDS and place.role.id not in CLOSING
    if not along or place.seam.long_mm < ALONG_AN_EDGE or place.said("edge") == "turned":
        return False
    closed = (p for p in places if p.unit == "lining" and p.role.closes)
    return any(set(p.cloths) & set(place.cloths) for p in closed)

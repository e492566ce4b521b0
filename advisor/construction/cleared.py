"""Wadding that is cut out of the allowances: no seam of a quilted cloth is sewn through it."""

from __future__ import annotations

from typing import Final

from msgspec.structs import replace

from advisor.knowledge.model import Knowledge
from advisor.project.garment import Garment, Seam

WADDING: Final = frozenset({"wadding", "fusible-wadding"})
QUILTING: Final = "quilting"
CLEARED: Final = frozenset({"seam", "gathers", "band"})
"""Families of places whose allowances are cleared of it."""
CLEARED_TOO: Final = frozenset({"", "zip", "faced-edge"})
"""Kinds of other families that are; a bound edge encloses it instead."""


def is_wadding(name: str, garment: Garment) -> bool:
    """Whether a layer is loose wadding."""
    return garment.cloths[name].entry in WADDING


def quilted_to_wadding(garment: Garment) -> frozenset[str]:
    """The cloths that are quilted to loose wadding somewhere in a garment."""
    rows = [set(s.cloths()) for s in garment.seams if s.place == QUILTING]
    held = [cloths for cloths in rows if any(is_wadding(c, garment) for c in cloths)]
    return frozenset(c for cloths in held for c in cloths if not is_wadding(c, garment))


def cleared(seam: Seam, garment: Garment, knowledge: Knowledge) -> Seam:
    """The seam as it is sewn: without the wadding that is cut away once its cloth is quilted."""
    kind = knowledge.places.kinds.get(seam.place)
    sewn = seam.place in CLEARED_TOO or (kind is not None and kind.family in CLEARED)
    if not sewn or not quilted_to_wadding(garment) & set(seam.cloths()):
        return seam
    left = tuple(use for use in seam.uses if not is_wadding(use.cloth, garment))
    return replace(seam, uses=left) if left else seam

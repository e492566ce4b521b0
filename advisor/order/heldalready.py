"""Which cut edges no row of stay-stitching is wanted in: what is eased, and what a glue holds."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Final

from advisor.order.fusing import beside_glue
from advisor.order.kinds import SeamPlace
from advisor.project.stands import SETTING

SETS_A_SLEEVE, ALONE = "armhole", frozenset({"collar", "stand"})
GLUED: Final = "fusible"


def held_already(place: SeamPlace, kinds: Mapping[str, str]) -> frozenset[str]:
    """The cloths of a place of which no edge is stay-stitched.

    The head of a sleeve is to be eased in, and a piece that is fused all over gives no more.

    Args:
        place: where they lie.
        kinds: the kind of entry of every cloth of the garment.
    """
    uses = place.seam.uses
    if place.role.id == SETS_A_SLEEVE:
        flat = {use.cloth for use in uses if use.fullness <= 1.0}
        return (
            frozenset(use.cloth for use in uses if use.cloth not in flat) if flat else frozenset()
        )
    if not any(GLUED in kinds[use.cloth] for use in uses):
        return frozenset()
    if place.role.id in ALONE:
        return frozenset(place.cloths)
    names = [use.cloth for use in uses]
    fused = beside_glue(place.seam, kinds) if place.seam.placed_by == SETTING else []
    return frozenset(name for name in fused if names.count(name) > 1 and len(place.cloths) > 1)

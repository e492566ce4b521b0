"""What is laid on and waits for the fitting, which says where it sits.

A cloth that keeps each hole takes one row; and a piece on the bias drops, while what is laid on it
with its own grain straight does not: sewn on before that, it holds the piece up in a bag.
"""

from __future__ import annotations

from typing import TYPE_CHECKING, Final

from msgspec.structs import replace

from advisor.order.kinds import SeamPlace
from advisor.order.untried import HOLED, NOT, TRIED

if TYPE_CHECKING:
    from advisor.order.fitting import Fitting

BY_EYE: Final = frozenset({"patch-pocket", "belt-loop"})
"""Kinds of what is set where the hand falls, or the belt lies, on the wearer."""
LAY_ON: Final = "lay-on"
APPLIQUE: Final = "applique"
BIAS: Final = "bias"
CAUGHT_IN: Final = "loop-caught-in"


def placed_on_the_body(place: SeamPlace, fitting: Fitting) -> bool:
    """Whether its height is settled at the fitting, since no row of it can be moved unseen.

    That is told by the cloth that it lies on, which is named last: a pocket of a coated cloth on
    another is sewn while the piece lies flat.
    """
    set_on = place.kind.id in BY_EYE and place.unit != "lining" and place.method.id != CAUGHT_IN
    tries = fitting.degree != NOT and fitting.garment.pattern != TRIED
    return set_on and tries and fitting.keeps(replace(place, cloths=place.cloths[-1:])) in HOLED


def laid_on_what_drops(place: SeamPlace, fitting: Fitting) -> bool:
    """Whether a cloth of straight grain is laid on one that hangs out first, its seams basted."""
    if place.kind.id != APPLIQUE or fitting.degree == NOT or place.unit == "lining":
        return False
    if any(stage.cuts_behind for stage in place.method.stages):
        return False  # only that cut waits
    hung = {cloth for other in fitting.places if fitting.drops(other) for cloth in other.cloths}
    grains = [{p.grain for p in fitting.garment.plan.pieces if p.cloth == c} for c in place.cloths]
    return bool(hung & set(place.cloths)) and any(BIAS not in found for found in grains)

"""What is laid on a cloth that keeps each hole waits for the fitting, which says where it sits."""

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
CAUGHT_IN: Final = "loop-caught-in"


def placed_on_the_body(place: SeamPlace, fitting: Fitting) -> bool:
    """Whether its height is settled at the fitting, since no row of it can be moved unseen.

    That is told by the cloth that it lies on, which is named last: a pocket of a coated cloth on
    another is sewn while the piece lies flat.
    """
    set_on = place.kind.id in BY_EYE and place.unit != "lining" and place.method.id != CAUGHT_IN
    tries = fitting.degree != NOT and fitting.garment.pattern != TRIED
    return set_on and tries and fitting.keeps(replace(place, cloths=place.cloths[-1:])) in HOLED

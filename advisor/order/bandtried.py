"""A band from which what is drawn up hangs: how long it is and where it sits, only the body tells.

The seams that run into it join widths or hang free, and no fitting changes them.
"""

from __future__ import annotations

from typing import TYPE_CHECKING, Final

from advisor.order.kinds import SeamPlace
from advisor.order.namewords import UPPER_ROLES
from advisor.project.methods import FITTINGS, PATTERNS

if TYPE_CHECKING:
    from advisor.order.fitting import Fitting

BAND, WAIST, BASTE, GATHER = "waistband", "waist", "baste", "gather"
TO_BODY: Final = FITTINGS[0]
TRIED: Final = PATTERNS[0]


def band_tried(place: SeamPlace, fitting: Fitting) -> bool:
    """Whether it is the band of what is drawn up, fitted to the body, with nothing above it."""
    drawn = place.kind.id == BAND and bool(place.full) and place.unit != "lining"
    if not drawn or fitting.degree != TO_BODY or fitting.garment.pattern == TRIED:
        return False
    others = (p for p in fitting.places if p.alone == place.alone)
    above = any(p.role.id in UPPER_ROLES or p.role.id == WAIST for p in others)
    return not above and basted_drawn_up(place)


def basted_drawn_up(place: SeamPlace) -> bool:
    """Whether its method bastes it on when its rows are drawn up, and not before they are sewn."""
    works = [stage.work for stage in place.method.stages]
    return GATHER in works and BASTE in works[works.index(GATHER) :]

"""A band from which a full skirt hangs: how long it is and where it sits, only the body tells.

The seams that run into gathers join widths, and no fitting changes them; a circle grows at its
waist as it hangs.
"""

from __future__ import annotations

from typing import TYPE_CHECKING, Final

from advisor.order.hanging import cut_in_a_circle
from advisor.order.kinds import SeamPlace, crosses
from advisor.order.namewords import UPPER_ROLES
from advisor.project.methods import FITTINGS, PATTERNS

if TYPE_CHECKING:
    from advisor.order.fitting import Fitting

BAND, WAIST, BASTE, GATHER = "waistband", "waist", "baste", "gather"
TO_BODY: Final = FITTINGS[0]
TRIED: Final = PATTERNS[0]


def band_tried(place: SeamPlace, fitting: Fitting) -> bool:
    """Whether what is drawn up or cut in a circle hangs from it, fitted, with nothing above it.

    What is slit or cut below it waits for the fitting, and so does the band that runs over that.
    """
    band = place.kind.id == BAND and place.unit != "lining"
    drawn = band and (bool(place.full) or _of_a_circle(place, fitting))
    if not drawn or fitting.degree != TO_BODY or fitting.garment.pattern == TRIED:
        return False
    others = [p for p in fitting.places if p.alone == place.alone]
    above = any(p.role.id in UPPER_ROLES or p.role.id == WAIST for p in others)
    waits = any(crosses(place, p) and fitting.cut_into(p) for p in others)  # so the band waits too
    return not above and not waits and basted_drawn_up(place)


def _of_a_circle(band: SeamPlace, fitting: Fitting) -> bool:
    """Whether a hem of its cloth is that of a circle: the waist edge grows as it hangs."""
    hems = (p for p in fitting.places if p.role.last and set(p.cloths) & set(band.cloths))
    return any(cut_in_a_circle(p, fitting.places, fitting.garment.name) for p in hems)


def basted_drawn_up(place: SeamPlace) -> bool:
    """Whether its method bastes it on when its rows are drawn up, and not before they are sewn."""
    works = [stage.work for stage in place.method.stages]
    return GATHER in works and BASTE in works[works.index(GATHER) :]

"""Straps from which a garment hangs, so that nobody fits it without them."""

from __future__ import annotations

from typing import TYPE_CHECKING, Final

from advisor.order.kinds import SeamPlace
from advisor.order.namewords import SHOULDERED
from advisor.project.attached import ends_elsewhere
from advisor.project.methods import FITTINGS
from advisor.project.placing import singular_words

if TYPE_CHECKING:
    from advisor.order.fitting import Fitting

ELASTIC_STRAP: Final = "strap-of-elastic"
STRAPS: Final = frozenset({"strap-turned", "strap-turned-with-its-slider", "strap-ends-sewn-on"})
"""How a strap is made whose ends are basted on, to try on what hangs from it."""
NOT: Final = FITTINGS[2]


def hung_from(place: SeamPlace, fitting: Fitting) -> bool:
    """Whether the garment hangs from these straps, or their own stretch is tried with it."""
    if fitting.degree == NOT or "strap" not in singular_words(place.name):
        return False
    worn = (p for p in fitting.places if p.alone == place.alone)
    shoulders = any(p.role.id in SHOULDERED for p in worn)
    sewn_on = ends_elsewhere(place.seam, fitting.garment.seams)
    hung = place.method.id in STRAPS and not sewn_on and not shoulders
    return place.method.id == ELASTIC_STRAP or hung

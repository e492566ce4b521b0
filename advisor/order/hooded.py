"""A hood on the body: how deep it is, and how it hangs from the neck, only a fitting tells."""

from __future__ import annotations

from typing import TYPE_CHECKING, Final

from advisor.order.kinds import SeamPlace
from advisor.project.placing import singular_words

if TYPE_CHECKING:
    from advisor.order.fitting import Fitting

HUNG: Final = "collar-attach"
HOOD, EDGE = "hood", "hood-edge"


def hood_tried(place: SeamPlace, fitting: Fitting) -> bool:
    """Whether it hangs a hood on the neck of what nobody has cut before."""
    hung = place.role.id == HUNG and HOOD in singular_words(place.name)
    return hung and fitting.garment.pattern == "new" and fitting.may_move(place)


def depth_open(place: SeamPlace, fitting: Fitting) -> bool:
    """Whether it is the edge round the face, while the depth of the hood is still to be tried."""
    return place.role.id == EDGE and any(hood_tried(p, fitting) for p in fitting.places)

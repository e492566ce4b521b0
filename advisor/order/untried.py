"""What is only basted to be tried on where nobody has cut the pattern before."""

from __future__ import annotations

from typing import TYPE_CHECKING, Final

from advisor.order.kinds import SeamPlace, crosses
from advisor.project.methods import FITTINGS
from advisor.project.placing import POCKETS

if TYPE_CHECKING:
    from advisor.order.fitting import Fitting

DART, CROTCH = "dart", "crotch"
TO_BODY: Final = FITTINGS[0]
COVERING: Final = frozenset({"backing", "laid on", "stay"})
"""Families of places that are laid over a dart."""


def dart_may_move(place: SeamPlace, fitting: Fitting) -> bool:
    """Whether it is a dart of what nobody has cut before, and is basted to be tried on.

    Sewn, it leaves its holes; and where the waist is basted, the bodice is tried on as a whole.
    What is laid over a dart before that, as canvas, lace or a stay, has it sewn first.
    """
    new = fitting.cut_anew and fitting.may_move(place) and fitting.concerned(place)
    if not new or place.op != DART or any(_covers(p, place) for p in fitting.places):
        return False
    return bool(fitting.keeps(place)) or any(map(fitting.hangs, fitting.places))


def _covers(over: SeamPlace, dart: SeamPlace) -> bool:
    flat = over.kind.family in COVERING and over.kind.id not in POCKETS
    return over.kind.id == "canvas" or (flat and crosses(over, dart))


def closes_the_body(place: SeamPlace, fitting: Fitting) -> bool:
    """Whether it is a side, a seam of a leg or a seat of trousers that are fitted to the body.

    The sides of a dress are sewn before it is tried on (`sewing-book-ch4`), and let out there.
    """
    legs = any(p.role.id == CROTCH for p in fitting.places)
    round_it = place.role.fitted and (place.role.closes or place.role.id == CROTCH)
    close = (place.seam.fitting or fitting.degree) == TO_BODY and fitting.concerned(place)
    return legs and round_it and close and place.op == "join" and place.unit != "lining"

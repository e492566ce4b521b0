"""Which edges a fitting may still want to let out, so that nothing is cut off them before."""

from __future__ import annotations

from typing import TYPE_CHECKING, Final

from advisor.order.quilting import cut_after_the_fitting

if TYPE_CHECKING:
    from advisor.order.facts import Facts
    from advisor.order.kinds import SeamPlace

SLEEVE: Final = "underarm"
CORRECTED: Final = frozenset({"shoulder", SLEEVE})
"""Roles of seams that a fitting corrects as often as a side; only an edge that is cut waits."""
CROTCH: Final = "crotch"
LEG_SEAMS: Final = frozenset({CROTCH, "inseam", "side"})
OVERLOCKED: Final = "overlocked"
PINKED: Final = "pinked"
"""The finish that cuts off an allowance what may be wanted when the seam is let out."""
OVERCAST: Final = "hand overcast"
"""The finish that is long work, and is lost where the fitting moves the seam."""


def corrected(place: SeamPlace, facts: Facts) -> bool:
    """Whether a fitting to the body corrects it as often as a side, though it is sewn before."""
    seam = place.role.id in CORRECTED and place.kind.family == "seam"
    return seam and facts.fitting.may_move(place)


def edges_wait(place: SeamPlace, facts: Facts) -> bool:
    """Whether the edges of a seam are left alone until it is fitted.

    Inside a closed leg no overlocker reaches: there the edges are neatened on the flat pieces, and
    nothing is trimmed off them.
    """
    if neatened_before_the_leg(place, facts):
        return False
    if cut_after_the_fitting(place, facts.fitting):
        return True
    cut = corrected(place, facts) and facts.setups.finish(place) in (PINKED, OVERCAST)
    return facts.fitting.fitted(place) or cut


def neatened_before_the_leg(place: SeamPlace, facts: Facts) -> bool:
    """Whether it is a seam of legs that is pressed open, and an overlocker neatens its edges."""
    leg = place.role.id in LEG_SEAMS and any(p.role.id == CROTCH for p in facts.places)
    over = leg and facts.setups.finish(place) == OVERLOCKED and place.op == "join"
    return over and bool(facts.garment.maker.overlocker) and facts.open_seam(place)


def left_whole(place: SeamPlace, facts: Facts) -> bool:
    """Whether an edge that is neatened before the fitting keeps its whole allowance for it."""
    fitted = facts.fitting.fitted(place) or neatened_before_the_leg(place, facts)
    moves = fitted and facts.fitting.may_move(place)
    return facts.setups.finish(place) != PINKED and (moves or corrected(place, facts))

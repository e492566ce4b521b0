"""Which edges a fitting may still want to let out, so that nothing is cut off them before."""

from __future__ import annotations

from typing import TYPE_CHECKING, Final

if TYPE_CHECKING:
    from advisor.order.facts import Facts
    from advisor.order.kinds import SeamPlace

SLEEVE: Final = "underarm"
CORRECTED: Final = frozenset({"shoulder", SLEEVE})
"""Roles of seams that a fitting corrects as often as a side; only an edge that is cut waits."""
PINKED: Final = "pinked"
"""The finish that cuts off an allowance what may be wanted when the seam is let out."""


def corrected(place: SeamPlace, facts: Facts) -> bool:
    """Whether a fitting to the body corrects it as often as a side, though it is sewn before."""
    seam = place.role.id in CORRECTED and place.kind.family == "seam"
    return seam and facts.fitting.may_move(place)


def edges_wait(place: SeamPlace, facts: Facts) -> bool:
    """Whether the edges of a seam are left alone until it is fitted."""
    cut = corrected(place, facts) and facts.setups.finish(place) == PINKED
    return facts.fitting.fitted(place) or cut


def left_whole(place: SeamPlace, facts: Facts) -> bool:
    """Whether an edge that is neatened before the fitting keeps its whole allowance for it."""
    moves = facts.fitting.fitted(place) and facts.fitting.may_move(place)
    return facts.setups.finish(place) != PINKED and (moves or corrected(place, facts))

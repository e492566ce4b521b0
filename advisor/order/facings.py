"""The free edge of a facing: it is neatened while the facing lies apart, for nothing covers it.

A facing is asked for no finish of its own, for its seam is closed in by turning. What is left is
the edge inside the garment. It is neatened as the open seams of its cloth are; where none of them
is (French or felled ones throughout), it is turned under and stitched.
"""

from __future__ import annotations

from advisor.order.facts import Facts
from advisor.order.kinds import SeamPlace
from advisor.order.steps import MachineState

TURNED_UNDER = "turned under and edge-stitched"


def facing_finish(facts: Facts, place: SeamPlace) -> str:
    """How the free edge of the facing of a place is neatened."""
    like = _like(place, facts)
    return facts.setups.finish(like) if like else TURNED_UNDER


def facing_machine(facts: Facts, place: SeamPlace) -> MachineState | None:
    """How the machine is set for that."""
    like = _like(place, facts)
    return facts.setups.finish_machine(like) if like else facts.setups.lock_machine(place)


def _like(place: SeamPlace, facts: Facts) -> SeamPlace | None:
    """The first seam of the facing's own cloth whose edges are neatened."""
    cloth = place.cloths[-1]
    alike = (p for p in facts.places if p.cloths == (cloth,) and facts.neatened(p))
    return next(alike, None)

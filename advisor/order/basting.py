"""How a place is basted to be tried on: clipped, drawn up, or in a row that gives."""

from __future__ import annotations

from collections.abc import Sequence
from typing import TYPE_CHECKING, Final

from msgspec.structs import replace

from advisor.knowledge.ordering import Operation
from advisor.order.ascut import holed_for_good
from advisor.order.bandtried import basted_drawn_up
from advisor.order.clipped import clips_a_curve
from advisor.order.fitting import TO_BODY

if TYPE_CHECKING:
    from advisor.order.facts import Facts
    from advisor.order.kinds import SeamPlace

BASTE: Final = "baste"
CLIPPED: Final = (
    "Clip {name} along its line, to try it on: no pin and no basting, every hole beside the row "
)
TAPED: Final = (
    "Tape {name} shut along its line, on the wrong side, to try it on: no pin and no basting, "
    "every hole beside the row "
)
LEAKS, STAYS = "leaks.", "stays."
DRAWN_UP: Final = "Draw {name} up roughly on a basting thread and baste it{how}, to try it on."
LINE, BY_HAND, GIVING = (
    " along its line",
    " by hand along its line",
    " along its line in a long machine zigzag that gives",
)
GIVING_BESIDE: Final = " just inside its allowance in a long machine zigzag that gives"
"""Of a pile, which keeps the track of a row along the line itself."""
IN_ALLOWANCE: Final = (
    "Baste {name} just inside its allowance, to try it on: in a coated cloth each hole shows."
)
ZIGZAG: Final = "zigzag"
TAKEN_OUT: Final = " Take the drawing thread out first."
MODERATE: Final = 2
"""From which level of `stretch` on a close garment is pulled on by what its seams give."""
EASED_ON: Final = ", its hollow edge eased on and not clipped yet"
OPEN_ENDED: Final = "open-ended-zip"
"""Its halves are clipped or basted by its own words."""


def as_basted(listed: Sequence[Operation], place: SeamPlace, facts: Facts) -> list[Operation]:
    """The work on a place, its basting as the cloths of it bear it."""
    usual = facts.knowledge.order.operations[BASTE]
    return [_basted(op, usual, place, facts) if op.id == BASTE else op for op in listed]


def _basted(op: Operation, usual: Operation, place: SeamPlace, facts: Facts) -> Operation:
    leaks = any(map(facts.proofed, place.cloths))
    if (leaks or holed_for_good(place, facts)) and place.method.id != OPEN_ENDED:
        inside = place.op == "dart"  # no clip reaches its line
        does = (TAPED if inside else CLIPPED) + (LEAKS if leaks else STAYS)
        verb = "tape shut" if inside else "clip"
        op = replace(usual, verb=verb, does=does) if op.verb == BASTE else op
    coated = any(facts.least(c, "coated") for c in place.cloths)
    if coated and not leaks and op == usual:
        op = replace(op, does=IN_ALLOWANCE)
    gives = op.verb == BASTE and "{how}" in op.does and _pulled_on(place, facts)
    if op == usual and facts.of_seam("gathered", place) and not basted_drawn_up(place):
        op = replace(op, does=DRAWN_UP + TAKEN_OUT * gives)
    return replace(op, machine=ZIGZAG) if gives else op


def _pulled_on(place: SeamPlace, facts: Facts) -> bool:
    """Whether it is tried on by being stretched, which snaps a hand thread."""
    close = facts.fitting.degree == TO_BODY and facts.setups.zigzags
    gives = any(facts.least(c, "stretch") >= MODERATE for c in place.cloths)
    return close and gives


def along(op: Operation, place: SeamPlace | None = None, facts: Facts | None = None) -> str:
    """How it is basted: a row that a machine sews gives as the garment is pulled on.

    Where the machine bastes some seams of a garment, the others are told to be basted by hand.
    """
    if op.machine == ZIGZAG:
        beside = facts is not None and place is not None and facts.tender_face(place)
        return GIVING_BESIDE if beside else GIVING
    basted = [p for p in facts.places if facts.fitting.basted(p)] if facts else []
    told = BY_HAND if facts and any(_pulled_on(p, facts) for p in basted) else LINE
    return told + (EASED_ON if facts and place and clips_a_curve(place, facts) else "")

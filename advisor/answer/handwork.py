"""Places that their method makes by hand: no machine is set for them, and nothing is told of one.

The claims of a place speak of a machine before anybody knows how it is made; once the order of
work has chosen a method that is sewn by hand, needle, stitch, tension and foot of a machine are
said no more, and its thread and height are those of hand work. Where nothing is sewn, no pin and
no thread is told either; and edges that another place shuts in are not neatened.
"""

from __future__ import annotations

from collections.abc import Mapping
from typing import Final

from msgspec.structs import replace

from advisor.answer.asked import SEWN
from advisor.claims.collect import Place
from advisor.claims.combine import Verdict, only
from advisor.claims.judgement import Advice, Judgement
from advisor.claims.shrinking import SHRINK
from advisor.construction.bulk import picked
from advisor.knowledge.places import GROUPS, Method
from advisor.order.setups import OVERLOCKS, UNFINISHED
from advisor.order.work import Work
from advisor.project.garment import Seam

STITCH, FINISH, DRAWN = "stitch.type", "seam.finish", "edge.drawn"
HAND: Final = "hand"
IDLE: Final = frozenset(GROUPS["machine"]) - {STITCH}
RAW: Final = "raw-edge"
CLOSE_ROW: Final = frozenset({"row", "trim"})


def as_made(
    advice: Advice, methods: Mapping[str, Method], shut_in: frozenset[str] = frozenset()
) -> Advice:
    """The advice as it is told once the methods are chosen, by the names of places.

    Of the places `shut_in` no finish of the edges is told, unless the seam is one by itself.
    """
    by_hand = {
        name: made.by_hand for name, made in methods.items() if made.by_hand or not made.sewn
    }
    judgement = _shut_in(advice.judgement, shut_in) if shut_in else advice.judgement
    judgement = _not_bought(judgement, _barred(judgement))
    judgement = _by_hand(judgement, by_hand) if by_hand else judgement
    return advice if judgement is advice.judgement else replace(advice, judgement=judgement)


def shut_in(work: Work) -> frozenset[str]:
    """The places of an order whose edges no step neatens.

    Frills in a band, rows laid on a face, what a tape lies over, a zip behind its facing.
    """
    done: dict[str, set[str]] = {}
    for task in work.tasks.values():
        if task.place is not None:
            done.setdefault(task.place.name, set()).add(task.operation.id if task.operation else "")
    return frozenset(name for name, ids in done.items() if not _neatened(ids))


def _neatened(operations: set[str]) -> bool:
    """Whether one of these neatens edges, or a second row is sewn and they are cut back to it."""
    return operations >= CLOSE_ROW or any(each.startswith("neaten") for each in operations)


def _shut_in(judgement: Judgement, names: frozenset[str]) -> Judgement:
    verdicts = {
        place: {aspect: one for aspect, one in found.items() if aspect != FINISH}
        if place.scope == "seam" and place.name in names and not _by_itself(dict(found))
        else found
        for place, found in judgement.verdicts.items()
    }
    return replace(judgement, verdicts=verdicts)


def _by_itself(found: dict[str, Verdict]) -> bool:
    """Whether the seam is its own finish: it encloses its edges, or the overlocker sewed it."""
    word = picked(found, FINISH) or ""
    sewn = picked(found, STITCH) in OVERLOCKS and word == "overlocked"
    return sewn or word in UNFINISHED


def _barred(judgement: Judgement) -> frozenset[str]:
    """The cords that would strangle a child: nothing is done to them before another is chosen."""
    drawn = (c for c in judgement.conflicts if c.aspect == DRAWN)
    return frozenset(said.who for c in drawn for one in (c, *c.also) for said in one.clash)


def _not_bought(judgement: Judgement, names: frozenset[str]) -> Judgement:
    """The judgement without how these are shrunk."""
    places = [place for name in names if (place := Place("fabric", name)) in judgement.verdicts]
    if not places:
        return judgement
    left = {p: {a: v for a, v in judgement.verdicts[p].items() if a != SHRINK} for p in places}
    return replace(judgement, verdicts={**judgement.verdicts, **left})


def _by_hand(judgement: Judgement, named: Mapping[str, str]) -> Judgement:
    """The judgement of places that no machine sews, with the hand stitch of each by its name."""
    seams = tuple(
        _as_sewn(seam, named[seam.name]) if seam.name in named else seam
        for seam in judgement.garment.seams
    )
    verdicts = {
        place: _without_machine(found, named[place.name])
        if place.scope == "seam" and place.name in named
        else found
        for place, found in judgement.verdicts.items()
    }
    garment = replace(judgement.garment, seams=seams)
    return replace(judgement, garment=garment, verdicts=verdicts)


def _as_sewn(seam: Seam, sewn: str) -> Seam:
    """A seam without a machine; an edge that is only cut is raw, and one ply of each cloth."""
    if sewn:
        return replace(seam, by_hand=True)
    plies = tuple({use.cloth: use for use in seam.uses}.values())
    return replace(seam, by_hand=True, place=RAW, uses=plies)


def _without_machine(found: Mapping[str, Verdict], sewn: str) -> dict[str, Verdict]:
    """The answers of a place without those of a machine; its stitch is this hand stitch.

    An edge that is only cut has no stitch: "".
    """
    idle = IDLE if sewn else SEWN
    left = {aspect: verdict for aspect, verdict in found.items() if aspect not in idle}
    stitch = left.get(STITCH)
    if stitch is not None and HAND in stitch.aspect.words:
        why = "The method by which it is made is sewn by hand."
        labels = stitch.aspect.labels | {HAND: f"by hand, in {sewn}"}
        named = replace(stitch, aspect=replace(stitch.aspect, labels=labels))
        left[STITCH] = only(named, stitch.aspect.words.index(HAND), why)
    return left

"""Which cloths keep rain out, and whether tape or sealant makes their seams tight."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from typing import TYPE_CHECKING

from msgspec.structs import replace

from advisor.construction.cleared import quilted_to_wadding
from advisor.knowledge.places import Method
from advisor.order.flapsclosed import held_by_tape
from advisor.order.kinds import SeamPlace, crosses

if TYPE_CHECKING:
    from advisor.order.facts import Facts

RAINWEAR = frozenset({"laminated-cotton", "softshell"})
"""Cloths against the rain that are no plain weave: each hole leaks; no imitation of leather."""
WAXED = "waxed-cotton"
UNTAPED = frozenset({"softshell", WAXED})
"""Those of them on whose inside no sealing tape holds: a fleece, and wax on either side."""
WITH_WAX = "seam-rows-waxed"
"""The method by which the rows of waxed cloth are made tight, once all of them are sewn."""
SEALING_TAPE = "sealing-tape"
SEAL, LIQUID = "seal", "seam-rows-sealed"
"""The work that makes rows tight, and the method whose way of it every other seam is lent."""
WELT, BY_TAPE = "welt-pocket", "seam-sealed-by-tape"
TAPE_HALVES = "stitch the tape of"
ROWS = {"faced-edge": "the rows that hold the tape of"}
"""Which rows of a place are sealed, where not all of them go through the outer cloth."""
SHUT_BY = frozenset({"finish-free-opening", "fell-lining"})
"""Work that brings the lining over rows, so that they are sealed before."""
PRESSED_ON = """, pressed on dry through paper that does not stick, the iron set down and lifted \
and never slid"""
OUTER = frozenset({"seam", "yoke"})
"""Kinds of place that join the pieces of a garment, so that rain comes through their rows."""
CUT_IN = frozenset({"zip", WELT})
LAID = frozenset({"patch-pocket", "ribbon", "applique"}) | CUT_IN
"""Kinds of place whose rows go through a piece, so that rain comes in behind what is laid on."""


BODY = frozenset({"side", "side-and-sleeve", "armhole", "raglan", "centre", "crotch", "inseam"})
"""Roles of the seams that close a garment round the body and the limbs."""


def answers(place: SeamPlace, facts: Facts) -> dict[str, Callable[[], bool]]:
    """The facts of a place that are told here."""
    return {"hem of coated cloth": lambda: any(proofed(c, facts) for c in place.cloths)}


def proofed(cloth: str, facts: Facts) -> bool:
    """Whether it is a coated cloth that keeps rain out, so that every hole in it leaks.

    One that is quilted has rows of holes all over, and its coated side is shut in.
    """
    made_for_it = facts.entry(cloth).id in RAINWEAR
    return _coated(cloth, facts) and (made_for_it or not lets_rain_in(facts))


def lets_rain_in(facts: Facts) -> bool:
    """Whether no seam round the body holds a cloth against the rain: yoke and pockets only trim it.

    Then no row of it is worth sealing, unless a sealing tape is laid on it.
    """
    body = [p for p in facts.places if p.role.id in BODY and p.unit != "lining"]
    body = [p for p in body if p.kind.family == "seam"]
    return bool(body) and not any(_coated(c, facts) for p in body for c in p.cloths)


def _coated(cloth: str, facts: Facts) -> bool:
    entry = facts.entry(cloth)
    rain = entry.structure == "woven" or entry.id in RAINWEAR
    pierced = cloth in quilted_to_wadding(facts.garment)  # in rows that nobody can seal
    return rain and not pierced and facts.least(cloth, "coated") > 0


def _holed(place: SeamPlace, facts: Facts) -> bool:
    """Whether rain comes through its rows: all of it is coated, or part of it and the garment is.

    A coated pocket on a cloth that lets the rain through has nothing to keep out.
    """
    tight = [_sealable(cloth, facts) for cloth in place.cloths]
    rain = any(tight) and (all(tight) or any(keeps_rain_out(p, facts) for p in facts.places))
    if place.kind.id in CUT_IN:
        rain = rain and tight[0]  # what it is cut into, and not its bag
    return rain or _taped(place, facts)


def coated_throughout(place: SeamPlace, facts: Facts) -> bool:
    """Whether all of a seam keeps rain out, so that a tape sticks to it; or she lays one on it."""
    uses = [use.cloth for use in place.seam.uses if use.cloth in place.cloths]
    tight = sum(_sealable(cloth, facts) for cloth in uses)
    return 0 < tight == len(uses) or _taped(place, facts)


def keeps_rain_out(place: SeamPlace, facts: Facts) -> bool:
    """Whether both sides of a seam keep rain out; one that lets it through has nothing to seal."""
    uses = [use.cloth for use in place.seam.uses if _sealable(use.cloth, facts)]
    return len(uses) > 1 or coated_throughout(place, facts)


def sealed(method: Method, place: SeamPlace, facts: Facts) -> Method:
    """A method with the rows of its seam sealed at the end, where rain would come through them.

    A method that seals by itself stays as it is, and for waxed cloth wax is bought.
    """
    known = facts.knowledge.places.methods
    if waxed(place, facts) and WITH_WAX in known:
        return replace(method, buys=tuple(dict.fromkeys((*method.buys, *known[WITH_WAX].buys))))
    lent = known.get(LIQUID)
    halves = any(stage.verb == TAPE_HALVES for stage in method.stages)
    taped = halves and held_by_tape(place, facts)
    outer = place.kind.id in OUTER and place.unit != "lining" and keeps_rain_out(place, facts)
    wet = outer or ((place.kind.id in LAID or taped) and _holed(place, facts))
    if lent is None or not wet or any(stage.work == SEAL for stage in method.stages):
        return method
    seal = tuple(stage for stage in lent.stages if stage.work == SEAL)
    shut = (k for k, stage in enumerate(method.stages) if stage.work in SHUT_BY)
    at = next(shut, len(method.stages))
    stages = (*method.stages[:at], *seal, *method.stages[at:])
    says = f"{method.says or method.name}, {lent.says}"
    return replace(method, stages=stages, buys=(*method.buys, *lent.buys), says=says)


def seal_words(place: SeamPlace, *, ironed: bool) -> str:
    """How the tape of a seam is pressed on, or into which rows of a place a sealer is brushed."""
    if place.method.id == BY_TAPE:
        return PRESSED_ON if ironed else ""
    kind = place.kind.id
    return "every row and corner of" if kind == WELT else ROWS.get(kind, "every row of")


def off_the_tape(place: SeamPlace, places: Sequence[SeamPlace]) -> str:
    """That an iron keeps clear of sealing tape where a place runs over a seam that has it."""
    taped = any(p.method.id == BY_TAPE and crosses(place, p) for p in places)
    return ", the iron clear of the sealing tape" if taped else ""


def waxed(place: SeamPlace, facts: Facts) -> bool:
    """Whether pieces of waxed cloth are joined there: its rows leak until they are waxed."""
    return place.kind.id in OUTER and any(facts.entry(c).id == WAXED for c in place.cloths)


def _sealable(cloth: str, facts: Facts) -> bool:
    """Whether a tape or a sealant holds on its inside, as on film, not on fleece or wax."""
    return proofed(cloth, facts) and facts.entry(cloth).id not in UNTAPED


def _taped(place: SeamPlace, facts: Facts) -> bool:
    """Whether the project lays sealing tape on the seam, whatever is known of its cloth."""
    return any(facts.entry(name).id == SEALING_TAPE for name in place.notions)

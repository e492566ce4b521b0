"""From a garment to verdicts and conflicts; what a remedy makes of them is a judgement too."""

from __future__ import annotations

from advisor.claims.byparts import pressed_by_parts
from advisor.claims.collect import Place, gather
from advisor.claims.combine import Verdict, decide
from advisor.claims.consistency import LINKED, agree
from advisor.claims.fused_first import fused_first
from advisor.claims.judgement import Judgement
from advisor.claims.pressed_alone import heard_apart, pressed_alone
from advisor.claims.shrinking import SHRINK, shrink_as_cleaned
from advisor.claims.speakers import Said
from advisor.claims.workarounds import gone_round, pressed_after_all, settle
from advisor.construction.bulk import add_bulk
from advisor.construction.edgeroom import ALLOWANCE, give_room
from advisor.construction.needlestack import add_needles
from advisor.construction.threadshare import THREADS, share_threads
from advisor.knowledge.model import Knowledge
from advisor.project.garment import Garment

AFRESH = LINKED | THREADS | {ALLOWANCE, SHRINK}
"""Aspects that hang on other answers, so that like words may bring another verdict."""


def judge(garment: Garment, knowledge: Knowledge, before: Judgement | None = None) -> Judgement:
    """Combine everything said about a garment; no remedies are tried.

    `before` is of a garment much like it: where the same is said, its verdict is taken over.
    """
    knowledge = knowledge.told(garment.units)
    gathered = gather(garment, knowledge, None if before is None else before.gathered)
    order = {aspect: i for i, aspect in enumerate(knowledge.aspects)}
    verdicts = {
        place: {
            name: _same(place, name, by_aspect[name], before)
            or decide(knowledge.aspects[name], by_aspect[name], together=place.scope == "seam")
            for name in sorted(by_aspect, key=order.__getitem__)
        }
        for place, by_aspect in gathered.said.items()
    }
    agree(garment, verdicts, knowledge)
    shrink_as_cleaned(garment, verdicts, knowledge)
    give_room(garment, verdicts)
    shades = share_threads(garment, verdicts, knowledge)
    add_bulk(garment, gathered, verdicts, knowledge)
    add_needles(garment, gathered, verdicts, knowledge)
    conflicts, instructions = settle(garment, verdicts, knowledge)
    instructions = pressed_alone(garment, verdicts, knowledge, conflicts, instructions)
    if garment.single:  # a garment's order of work presses each seam as its pieces bear
        heard_apart(verdicts, instructions)
    instructions = (*fused_first(garment, verdicts, knowledge, conflicts), *instructions)
    told = {name for item in instructions if item.kind == "part" for name in item.tender}
    beside = [said for said in gathered.beside if not said.cloths <= told]
    instructions += gone_round(Place("garment", garment.name), verdicts, beside)
    parts = pressed_by_parts(garment, verdicts, knowledge)
    instructions = tuple(pressed_after_all(i) if parts else i for i in instructions) + parts
    return Judgement(garment, gathered, verdicts, conflicts, instructions, shades)


def _same(place: Place, aspect: str, said: list[Said], before: Judgement | None) -> Verdict | None:
    """The verdict of before, if exactly the same was said then."""
    if aspect in AFRESH or before is None or aspect not in before.verdicts.get(place, {}):
        return None
    return before.verdicts[place][aspect] if before.gathered.said[place][aspect] == said else None

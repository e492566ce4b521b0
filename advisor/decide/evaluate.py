"""From a garment to verdicts and conflicts; what a remedy makes of them is a judgement too."""

from __future__ import annotations

from advisor.claims.behind import partly_backed
from advisor.claims.byparts import pressed_by_parts
from advisor.claims.collect import Gathered, Place, gather
from advisor.claims.combine import Verdict, decide
from advisor.claims.consistency import agree
from advisor.claims.folding import cut_singly
from advisor.claims.fused_first import fused_first
from advisor.claims.hungup import hanging_with, hung_up, left_hanging
from advisor.claims.judgement import Judgement
from advisor.claims.lifted import lining_lifted
from advisor.claims.linedup import matched_singly
from advisor.claims.pressed_alone import heard_apart, pressed_alone
from advisor.claims.shrinking import shrink_as_cleaned
from advisor.claims.speakers import Said
from advisor.claims.workarounds import PART, gone_round, is_lining, pressed_after_all, settle
from advisor.construction.bulk import add_bulk
from advisor.construction.edgeroom import give_room
from advisor.construction.needlestack import add_needles, never_finer
from advisor.construction.stays import stayed_once
from advisor.construction.threadshare import share_threads
from advisor.knowledge.model import LIMIT_ASPECT, Knowledge
from advisor.project.garment import Garment

DAMP = "press.moisture"
BINDS = "bound-edge"
"""The kind of place that only binds an edge."""
Small = dict[tuple[str, str], frozenset[str]]
Decided = dict[Place, dict[str, tuple[list[Said], frozenset[str], Verdict]]]


def judge(garment: Garment, knowledge: Knowledge, before: Judgement | None = None) -> Judgement:
    """Combine everything said about a garment; no remedies are tried.

    `before` is of a garment much like it: where the same is said, its verdict is taken over.
    """
    knowledge = knowledge.told(garment.units)
    gathered = gather(garment, knowledge, None if before is None else before.gathered)
    small = _small(garment, knowledge)
    whole = Place("garment", garment.name)
    hung = hung_up(garment, gathered.said.get(whole, {}), knowledge)
    left = _left_at_last(garment, hung, knowledge)
    decided = _decided(gathered, knowledge, {} if before is None else before.decided, small, left)
    verdicts = {
        place: {name: verdict for name, (*_, verdict) in by_aspect.items()}
        for place, by_aspect in decided.items()
    }
    agree(garment, verdicts, knowledge)
    cut_singly(garment, verdicts)
    shrink_as_cleaned(garment, verdicts, knowledge)
    matched_singly(garment, verdicts)
    give_room(garment, verdicts)
    stayed_once(garment, verdicts, knowledge)
    shades = share_threads(garment, verdicts, knowledge)
    add_bulk(garment, gathered, verdicts, knowledge)
    add_needles(garment, gathered, verdicts, knowledge)
    never_finer(garment, gathered, verdicts, knowledge)
    conflicts, instructions = settle(garment, verdicts, knowledge)
    instructions = pressed_alone(garment, verdicts, knowledge, conflicts, instructions)
    if garment.single:  # a garment's order of work presses each seam as its pieces bear
        heard_apart(verdicts, instructions)
    instructions = (*fused_first(garment, verdicts, knowledge, conflicts), *instructions)
    told = {name for item in instructions if item.kind == PART for name in item.tender}
    told |= hanging_with(hung, garment)
    beside = [said for said in gathered.beside if not said.cloths <= told]
    instructions += gone_round(whole, verdicts, beside)
    instructions += left_hanging(hung, whole)
    instructions += partly_backed(garment, verdicts)
    parts = pressed_by_parts(garment, verdicts, knowledge, hung)
    instructions = tuple(pressed_after_all(i) if parts else i for i in instructions) + parts
    if not garment.single and not parts:
        instructions = lining_lifted(garment, verdicts, instructions, knowledge)
    return Judgement(garment, gathered, verdicts, conflicts, instructions, shades, decided)


def _left_at_last(garment: Garment, hung: frozenset[str], knowledge: Knowledge) -> frozenset[str]:
    """What the last press leaves: all of it where no cloth is pressed, for nobody presses a zip."""
    cloths = {n for n, c in garment.cloths.items() if knowledge.entries[c.entry].kind == "cloth"}
    return hung if cloths - hung else hung | (frozenset(garment.cloths) if hung else frozenset())


def _small(garment: Garment, knowledge: Knowledge) -> Small:
    """After whom nobody sets the iron of the whole, and after whom not the damp of any place.

    That is what lines a garment, binds its edges or is no cloth, all but what it is made of; a
    lining that one drop marks keeps the damp away all the same.
    """
    shown = {c for seam in garment.seams if seam.place != BINDS for c in seam.cloths()}
    entries = {n: knowledge.entries[cloth.entry] for n, cloth in garment.cloths.items()}
    made_of = {n for n, e in entries.items() if e.kind == "cloth" and not is_lining(n, e)}
    notions = frozenset(n for n, e in entries.items() if e.kind != "cloth")
    lining = frozenset(entries) - (made_of & shown)
    return {("garment", LIMIT_ASPECT): lining, ("garment", DAMP): notions, ("seam", DAMP): notions}


def _decided(
    gathered: Gathered, knowledge: Knowledge, before: Decided, small: Small, left: frozenset[str]
) -> Decided:
    """What was heard of every aspect, and what it comes to alone; `left` is not pressed at last."""
    order = {aspect: i for i, aspect in enumerate(knowledge.aspects)}
    found: Decided = {}
    for place, by_aspect in gathered.said.items():
        known, together = before.get(place, {}), place.scope != "fabric"
        here = found[place] = {}
        for name in sorted(by_aspect, key=order.__getitem__):
            said, old = by_aspect[name], known.get(name)
            if place.scope == "garment" and name.startswith("press."):
                said = [s for s in said if not s.cloths or s.cloths - left]
            if not said:
                continue
            apart = small.get((place.scope, name), frozenset())
            if old is not None and old[0] == said and old[1] == apart:
                here[name] = old
            else:
                aspect = knowledge.aspects[name]
                here[name] = (said, apart, decide(aspect, said, together=together, small=apart))
    return found

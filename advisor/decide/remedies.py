"""Applies remedies to a copy of the garment, re-runs it, and keeps those that cure.

A remedy is offered only when its conflict is gone in every place, none is new or has grown, no
must that stood is broken another way, and the thing still gets made.
"""

from __future__ import annotations

from advisor.claims.conflicts import Conflict
from advisor.claims.judgement import Cure, Judgement
from advisor.claims.workarounds import GLUED
from advisor.construction.bulk import picked
from advisor.decide.case import Case
from advisor.decide.changes import CHANGES
from advisor.decide.evaluate import judge
from advisor.knowledge.model import Knowledge, Remedy
from advisor.project.garment import Garment, Seam
from advisor.project.lines import lines_between


def cures_of(
    conflict: Conflict, before: Judgement, knowledge: Knowledge, tried: list[Judgement]
) -> tuple[Cure, ...]:
    """The remedies that were tried and cure a conflict, cheapest first.

    `tried` holds what was judged for other conflicts of the same garment, and grows.
    """
    cures = []
    for remedy in knowledge.remedies:
        if not may_cure(remedy, conflict):
            continue
        made = attempt(remedy, conflict, before, knowledge)
        if made is None:
            continue
        changed, words = made
        after = next((t for t in tried if t.garment == changed), None)
        if after is None:
            after = judge(changed, knowledge, before)
            tried.append(after)
        if cured((conflict,), before, after, knowledge):
            cures.append(cure_of(remedy, words, before, after, knowledge))
    return ranked(cures, conflict, before, knowledge)


def ranked(
    cures: list[Cure], conflict: Conflict, before: Judgement, knowledge: Knowledge
) -> tuple[Cure, ...]:
    """Cheapest first: a worse look counts double; of one price what the cloths want, then by name.

    What they want is the interfacing that the sheet would pick in that place.
    """
    wanted = picked(before.verdicts.get(conflict.place, {}), "interfacing.kind")
    kinds = {remedy.id: remedy.change.get("kind") for remedy in knowledge.remedies}
    return tuple(
        sorted(cures, key=lambda c: (c.cost, not wanted or kinds[c.remedy] != wanted, c.remedy))
    )


def may_cure(remedy: Remedy, conflict: Conflict) -> bool:
    """Whether a remedy is meant for one of the aspects of a conflict."""
    return any(a.startswith(cured) for a in conflict.aspects for cured in remedy.cures)


def attempt(
    remedy: Remedy,
    conflict: Conflict,
    before: Judgement,
    knowledge: Knowledge,
    garment: Garment | None = None,
) -> tuple[Garment, dict[str, str]] | None:
    """A garment with a remedy applied, and the words of its sentence; not judged yet.

    `garment` is what it is applied to, where other remedies were applied before.
    """
    case = Case(conflict, before, knowledge, remedy, garment)
    changed = CHANGES[str(remedy.change["do"])](case) if case.fits() else None
    return None if changed is None or changed == case.garment else (changed, case.words())


def cure_of(
    remedy: Remedy,
    words: dict[str, str],
    before: Judgement,
    after: Judgement,
    knowledge: Knowledge,
) -> Cure:
    """A remedy that has been proved, with the lines that say it in a project."""
    lines = lines_between(before.garment, after.garment, knowledge)
    return Cure(remedy.id, words, after, remedy.effort, remedy.look, lines)


def cured(
    conflicts: tuple[Conflict, ...], before: Judgement, after: Judgement, knowledge: Knowledge
) -> bool:
    """Whether these conflicts are gone, and nothing else has gone wrong instead.

    Another cause that clashed in the same place all along may be left there for its own remedy.
    """
    was, left = _clashes(before), _clashes(after)
    old, new = _seams(before.garment), _seams(after.garment)
    gone = {one.key: one.cause for c in conflicts for one in (c, *c.also)}
    for key, conflict in left.items():
        known = was.get(key)
        if known is None or gone.get(key, ()) == conflict.cause:
            return False
        untouched = old.get(conflict.place.name) == new.get(conflict.place.name)
        stood = known.clash == conflict.clash or conflict.cause in known.behind
        if key in gone and conflict.cause not in known.behind:
            return False
        if not stood and not untouched:
            return False  # a must that stood is broken by what the remedy brings
    return still_made(before.garment, after.garment, knowledge)


def still_made(old: Garment, new: Garment, knowledge: Knowledge) -> bool:
    """Whether every glue gets hot somewhere: in its seam, or before on a layer that bears it."""
    before = _seams(old)
    for seam in new.seams:
        glues = {n for n in seam.cloths() if knowledge.entries[new.cloths[n].entry].kind in GLUED}
        if seam != before.get(seam.name) and seam.cold and glues - seam.apart:
            return False
    return True


def _clashes(judgement: Judgement) -> dict[tuple[str, str], Conflict]:
    return {one.key: one for conflict in judgement.conflicts for one in (conflict, *conflict.also)}


def _seams(garment: Garment) -> dict[str, Seam]:
    return {seam.name: seam for seam in garment.seams}

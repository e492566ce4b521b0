"""Clashes of fusibles that cannot get hot enough where they lie, and what cures them."""

from __future__ import annotations

from collections.abc import Callable, Iterator

from msgspec.structs import replace

from advisor.claims.collect import Place
from advisor.claims.conflicts import Conflict, in_order
from advisor.claims.judgement import Advice, Cure, Judgement
from advisor.decide.evaluate import judge
from advisor.heat.gluing import (
    FLAT,
    IN_SEAM,
    INTERFACING,
    Fused,
    FusingTrial,
    best_of,
    clash_of,
    seam_trials,
    trials_of,
)
from advisor.heat.layers import FUSIBLES
from advisor.heat.questions import Heat, ask_trials, heat_of_garment
from advisor.heat.stacks import fusibles_in
from advisor.knowledge.model import LIMIT_ASPECT, Knowledge
from advisor.knowledge.places import SEWN_ON
from advisor.project.garment import Garment, Seam
from advisor.project.glue_first import fused_as_made

Ask = Callable[[list[FusingTrial]], list[Fused]]
"""Asks the heat model, all at once."""


def with_clashes(advice: Advice, tried: list[Fused], knowledge: Knowledge, ask: Ask) -> Advice:
    """The advice with a clash for each fusible that cannot get hot enough, and its cures."""
    judgement = advice.judgement
    cures = dict(advice.cures)
    new: list[Conflict] = []
    for conflict, best, group in _clashes(judgement, tried, knowledge):
        new.append(conflict)
        cures[conflict.key] = _cures(conflict, best, group, judgement, knowledge, ask)
    return Advice(_with(judgement, new), cures) if new else advice


def with_heat_of_glue(judgement: Judgement, knowledge: Knowledge) -> Judgement:
    """A judgement with the clashes of fusibles that cannot get hot enough; no cure is tried."""
    garment = judgement.garment
    if not any(fusibles_in(garment, knowledge, seam) for seam in garment.seams):
        return judgement
    tried = ask_trials(trials_of(judgement, knowledge))
    return _with(judgement, [conflict for conflict, _, _ in _clashes(judgement, tried, knowledge)])


def _with(judgement: Judgement, new: list[Conflict]) -> Judgement:
    """The judgement with some conflicts more, all in their order."""
    found = in_order((*judgement.conflicts, *new), list(judgement.verdicts))
    return replace(judgement, conflicts=found)


def _clashes(
    judgement: Judgement, tried: list[Fused], knowledge: Knowledge
) -> Iterator[tuple[Conflict, Fused, list[Fused]]]:
    """Each fusible whose best way in the seam is hopeless: its clash, that way, all its ways."""
    known = set(judgement.clashes)
    groups: dict[tuple[str, str], list[Fused]] = {}
    sewn_on = {s.name for s in judgement.garment.seams if s.place in SEWN_ON}
    for one in (t for t in tried if t.trial.place not in sewn_on):  # fused long before a button
        groups.setdefault((one.trial.place, one.trial.fusible), []).append(one)
    garment = judgement.garment
    first = {s.name: _flat_first(s, garment, knowledge) for s in garment.seams}
    for (place, fusible), group in groups.items():
        best = best_of(group, (FLAT,) if fusible in first[place] else IN_SEAM)
        told = known & {(place, LIMIT_ASPECT), (place, INTERFACING)}
        if best is None or not best.hopeless or told:
            continue
        conflict = clash_of(best, judgement.garment.units)
        known.add(conflict.key)
        yield conflict, best, group


def _flat_first(seam: Seam, garment: Garment, knowledge: Knowledge) -> frozenset[str]:
    """What is fused before the seam: as the project says, and wherever that is how it is made."""
    if not fused_as_made(seam, knowledge):
        return seam.apart
    return seam.apart | {seam.uses[at].cloth for at in fusibles_in(garment, knowledge, seam)}


def _cures(
    conflict: Conflict,
    best: Fused,
    group: list[Fused],
    judgement: Judgement,
    knowledge: Knowledge,
    ask: Ask,
) -> tuple[Cure, ...]:
    """The remedies that name a fusible: applied to a copy, judged and asked of the model anew."""
    from advisor.decide.remedies import attempt, cure_of, cured, ranked

    flat = best_of(group, (FLAT,))
    found = []
    for remedy in knowledge.remedies:
        kinds = remedy.needs.get("notion") or ()
        if LIMIT_ASPECT not in [c if c != "press." else LIMIT_ASPECT for c in remedy.cures]:
            continue
        if not set(kinds) & set(FUSIBLES):
            continue
        if remedy.change["do"] == "fuse first":
            made = _fused_first(judgement.garment, best, flat)
        else:
            made = attempt(remedy, conflict, judgement, knowledge)
        if made is None:
            continue
        changed, words = made
        after = judge(changed, knowledge, judgement)
        if not cured((), judgement, after, knowledge):
            continue
        flat_only = remedy.change["do"] == "fuse first"
        if not flat_only and not _now_hot(conflict.place, after, knowledge, ask):
            continue
        found.append(cure_of(remedy, words, judgement, after, knowledge))
    return ranked(found, conflict, judgement, knowledge)


def _fused_first(
    garment: Garment, best: Fused, flat: Fused | None
) -> tuple[Garment, dict[str, str]] | None:
    """The fusible fused flat to its neighbour, where the model says that its glue gets hot."""
    if flat is None or flat.hopeless:
        return None
    fusible, place = best.trial.fusible, best.trial.place
    seams = tuple(
        replace(s, apart=s.apart | {fusible}) if s.name == place else s for s in garment.seams
    )
    others = [c for s in garment.seams if s.name == place for c in s.cloths()]
    rest = [c for c in others if c not in (fusible, flat.trial.neighbour)]
    words = {
        "notion": fusible,
        "neighbour": flat.trial.neighbour,
        "needy": fusible,
        "tender": " and ".join(rest) or "the other layer",
        "place": place,
        "choice": "",
        "you": "",
    }
    return replace(garment, seams=seams), words


def _now_hot(place: Place, after: Judgement, knowledge: Knowledge, ask: Ask) -> bool:
    """Whether no fusible is left in a seam, or its glue may get hot now."""
    seam = next(s for s in after.garment.seams if s.name == place.name)
    if not fusibles_in(after.garment, knowledge, seam):
        return True
    trials = [t for t in seam_trials(seam, after, knowledge) if t.way in IN_SEAM]
    best = best_of(ask(trials), IN_SEAM)
    return best is not None and not best.hopeless


def advise_with_heat(
    advice: Advice, knowledge: Knowledge, *, full: bool = True
) -> tuple[Advice, Heat]:
    """The advice, with the clashes of fusibles that cannot get hot enough, and the heat itself."""
    heat = heat_of_garment(advice.judgement, knowledge, full=full)
    return with_clashes(advice, list(heat.fused), knowledge, ask_trials), heat

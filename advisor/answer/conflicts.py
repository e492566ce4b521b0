"""Conflicts and their remedies as they are told; each has one number, wherever it is printed."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import replace

from advisor.answer import wording
from advisor.answer.instructions import take_word, told_lines
from advisor.answer.model.told import ToldConflict, ToldCureAll, ToldPrice, ToldRemedy
from advisor.answer.teller import Teller
from advisor.answer.verdicts import told_claim
from advisor.claims.conflicts import Conflict
from advisor.claims.judgement import Advice, Cure
from advisor.claims.speakers import Said
from advisor.decide.case import listed
from advisor.decide.changes import REPLACING


def told_conflicts(advice: Advice, teller: Teller) -> tuple[ToldConflict, ...]:
    """Every clash of claims, in the order in which the conflicts are numbered."""
    return tuple(
        _conflict(number, one, advice, teller)
        for number, one in enumerate(advice.judgement.conflicts, 1)
    )


def told_cure_all(advice: Advice, teller: Teller) -> ToldCureAll | None:
    """The cheapest remedies that between them leave no conflict; None where there are none."""
    garment = teller.garment
    if garment.single or not advice.judgement.conflicts:
        return None
    from advisor.decide.together import cure_all

    found = cure_all(advice, teller.knowledge)
    if found is None:
        return None
    lines, yaml = told_lines(found.lines, garment)
    return ToldCureAll(
        takes=tuple(take_word(*pick) for pick in found.picks),
        remedies=tuple(cure.remedy for cure in found.cures),
        price=ToldPrice(sum(c.effort for c in found.cures), sum(c.look for c in found.cures)),
        checked=True,
        lines=lines,
        yaml=yaml,
    )


def numbered(conflicts: tuple[ToldConflict, ...]) -> tuple[ToldConflict, ...]:
    """Conflicts with their numbers, from one on."""
    return tuple(replace(one, number=at) for at, one in enumerate(conflicts, 1))


def _no_cure(claims: Iterable[Said], *, label: bool) -> str:
    """What is left where no remedy cures it: first to find out what a part is made of."""
    unsure = [s.who for s in claims if any(f.fact == "fibre" and not f.certain for f in s.facts)]
    asked = f"find out what the {listed(dict.fromkeys(unsure))} is made of, " if unsure else ""
    last = "let it come off" if label else "leave it out"
    return f"No single remedy that we know cures this: {asked}change a cloth, or {last}."


def _conflict(number: int, conflict: Conflict, advice: Advice, teller: Teller) -> ToldConflict:
    cures = advice.cures.get(conflict.key, ())
    aspects = teller.knowledge.aspects
    shown = aspects.get(conflict.aspect) or aspects["care.wash"]
    claims = dict.fromkeys(said for one in (conflict, *conflict.also) for said in one.clash)
    return ToldConflict(
        number=number,
        id=conflict.id,
        aspect=conflict.aspect,
        aspects=tuple(conflict.aspects),
        place=conflict.place.name,
        places=tuple(conflict.places),
        scope=conflict.place.scope,
        severity=conflict.severity,
        between=tuple(conflict.between),
        message=teller.say(wording.conflict_message(conflict, teller.knowledge, teller.units)),
        because=tuple(
            told_claim(said, aspects.get(said.claim.aspect, shown), teller) for said in claims
        ),
        remedies=tuple(
            _remedy(take_word(number, which), cure, conflict, teller)
            for which, cure in enumerate(cures, 1)
        ),
        no_cure="" if cures else _no_cure(claims, label=conflict.aspect.startswith("care.")),
        replaces=_replaced(cures, teller),
    )


def _replaced(cures: Sequence[Cure], teller: Teller) -> tuple[str, ...]:
    """What the remedy that is offered first puts another in place of, or leaves out."""
    how = {remedy.id: remedy.change.get("do") for remedy in teller.knowledge.remedies}
    first = (cure for cure in cures[:1] if how[cure.remedy] in REPLACING and cure.words)
    return tuple(str(cure.words["notion"]) for cure in first if "notion" in cure.words)


def _remedy(take: str, cure: Cure, conflict: Conflict, teller: Teller) -> ToldRemedy:
    remedy = next(r for r in teller.knowledge.remedies if r.id == cure.remedy)
    after = cure.after.verdicts.get(conflict.place, {}).get(conflict.aspect)
    then = f" {wording.sentence(wording.verdict_text(after, teller.units))}" if after else ""
    words = {**cure.words, "after": wording.iron_left(cure.after.verdicts, conflict.place)}
    lines, yaml = told_lines(cure.lines, teller.garment)
    return ToldRemedy(
        take=take,
        id=cure.remedy,
        text=teller.say(remedy.text.format_map(words)),
        price=ToldPrice(cure.effort, cure.look),
        then=teller.say(remedy.then + then).strip(),
        earlier=remedy.earlier,
        checked=True,
        lines=lines,
        yaml=yaml,
        sources=teller.cite(remedy.sources),
    )

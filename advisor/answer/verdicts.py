"""Verdicts and the claims behind them, as they are told."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import replace

from advisor.answer import wording
from advisor.answer.instructions import apart, by_parts, hanging, over, parted_text
from advisor.answer.model.told import ToldClaim, ToldFact, ToldVerdict
from advisor.answer.teller import Teller
from advisor.claims.byparts import spared
from advisor.claims.claimsets import set_of
from advisor.claims.collect import Place
from advisor.claims.combine import Verdict
from advisor.claims.hovered import unmarked
from advisor.claims.judgement import Judgement
from advisor.claims.speakers import IRONING, Said
from advisor.claims.valuesets import Choice, Span
from advisor.claims.whose_word import against, deciders, overrun, to_itself
from advisor.claims.workarounds import Instruction, kept_off, piled_trims
from advisor.knowledge.model import COLD, LIMIT_ASPECT, Aspect
from advisor.knowledge.places import SEWN_ON
from advisor.order.pieces import sheet_grain

GRAIN, MOTION = "cut.grain", "press.motion"


def told_verdicts(judgement: Judgement, teller: Teller) -> tuple[ToldVerdict, ...]:
    """Every verdict of a garment, place by place."""
    items = judgement.instructions
    kept = sorted({*hanging(items), *piled_trims(teller.garment, teller.knowledge)})
    parted, off = by_parts(items), f"{over(kept)}{apart(items)}"
    unpressed = never_pressed(judgement)
    return tuple(
        told_verdict(place, verdict, teller, parted, off)
        for place, by_aspect in judgement.verdicts.items()
        for verdict in by_aspect.values()
        if not (verdict.aspect.id.startswith("press.") and place.name in unpressed)
    )


def never_pressed(judgement: Judgement) -> frozenset[str]:
    """The places of a whole garment at which something is only sewn on.

    One from which a rule keeps every iron says so all the same.
    """
    garment = judgement.garment
    seams = () if garment.single else garment.seams
    sewn = {seam.name for seam in seams if seam.place in SEWN_ON}
    return frozenset(
        place.name
        for place, by_aspect in judgement.verdicts.items()
        if place.scope == "seam" and place.name in sewn and not _keeps_cold(by_aspect)
    )


def _keeps_cold(by_aspect: Mapping[str, Verdict]) -> bool:
    heat = by_aspect.get(LIMIT_ASPECT)
    return heat is not None and isinstance(heat.advised, Span) and heat.advised.high <= COLD


def told_verdict(
    place: Place,
    verdict: Verdict,
    teller: Teller,
    parted: Instruction | None = None,
    off: str = "",
) -> ToldVerdict:
    """One verdict with its reasons, those that decide it first."""
    aspect = verdict.aspect
    first = deciders(verdict)
    rest = [said for said in verdict.because if said not in first]
    options, pick = _options(verdict)
    low, high, number = _ends(verdict)
    limited = aspect.id == LIMIT_ASPECT and isinstance(verdict.allowed, Span)
    return ToldVerdict(
        aspect=aspect.id,
        scope=place.scope,
        place=place.name,
        kind=aspect.kind,
        options=options,
        unit=aspect.unit,
        low=low,
        high=high,
        pick=pick if options is not None else number,
        text=_text(place, verdict, teller, parted, off),
        because=tuple(
            [told_claim(said, aspect, teller, decides=True) for said in first]
            + [told_claim(said, aspect, teller, decides=False) for said in rest]
        ),
        given_up=tuple(
            _given_up(said, verdict, teller)
            for said in (*verdict.given_up, *overrun(verdict))
            if not _met_all_the_same(said, verdict) and not to_itself(verdict, said)
        ),
        limit=verdict.allowed.high if limited and isinstance(verdict.allowed, Span) else None,
    )


def _text(
    place: Place,
    verdict: Verdict,
    teller: Teller,
    parted: Instruction | None,
    off: str,
) -> str:
    """The answer in words; of the grain also where the pattern leaves it."""
    words = wording.verdict_text(verdict, teller.units)
    if place.scope == "garment" and verdict.aspect.id == LIMIT_ASPECT and parted is not None:
        return f"{parted_text(parted, teller.units)}{off}"
    if place.scope == "garment" and verdict.aspect.id == LIMIT_ASPECT and not unmarked(verdict):
        return f"{words}{off}"
    if place.scope == "garment" and verdict.aspect.id == MOTION and parted is not None:
        return f"lift and lower, {words} the rest"
    if place.scope == "garment" and verdict.aspect.id == IRONING and verdict.pick:
        off_it = {*kept_off(teller.garment, teller.knowledge), *spared(parted)}
        return f"{words}{over(sorted(off_it))}"
    if verdict.aspect.id != GRAIN or place.name not in teller.garment.cloths:
        return words
    return sheet_grain(teller.garment, place.name, words)


def _met_all_the_same(said: Said, verdict: Verdict) -> bool:
    """Whether a wish that had to give way to others gets what it wants: then it lost nothing."""
    pick = verdict.pick
    if pick is None:
        return False
    return (int(pick) if verdict.aspect.kind == "options" else pick) in set_of(said.claim)


def _given_up(said: Said, verdict: Verdict, teller: Teller) -> ToldClaim:
    """What gave way, and to whom."""
    to = tuple(dict.fromkeys(wording.who_text(s) for s in against(verdict, said)))
    return replace(told_claim(said, verdict.aspect, teller), to=to)


def told_claim(
    said: Said, aspect: Aspect, teller: Teller, *, decides: bool | None = None
) -> ToldClaim:
    """What somebody says of an aspect, on what facts and on whose word."""
    claim = said.claim
    return ToldClaim(
        who=wording.who_text(said),
        says=teller.say(wording.says_text(said, aspect, teller.units)),
        strength=claim.strength,
        why=teller.say(claim.why),
        rule=claim.origin,
        certain=said.certain,
        facts=tuple(ToldFact(f.who, f.fact, f.value) for f in said.facts),
        sources=teller.cite(claim.sources),
        decides=decides,
    )


def _options(verdict: Verdict) -> tuple[tuple[str, ...] | None, str | None]:
    """The options that are advised, or that are taken away, and the pick."""
    aspect, advised = verdict.aspect, verdict.advised
    if not isinstance(advised, Choice):
        return None, None
    mask = advised.mask
    if aspect.excluded:
        mask = ((1 << len(aspect.words)) - 1) & ~mask
    words = tuple(aspect.words[i] for i in Choice(mask).options())
    none = verdict.pick is None or aspect.excluded
    return words, None if none else aspect.words[int(verdict.pick or 0)]


def _ends(verdict: Verdict) -> tuple[float | str | None, float | str | None, float | str | None]:
    """Low, high and pick in the words and units of the aspect; nothing of an empty set."""
    advised, pick = verdict.advised, verdict.pick
    if not isinstance(advised, Span) or advised.is_empty:
        return None, None, None
    if verdict.aspect.kind != "scale":
        return advised.low, advised.high, pick
    words = verdict.aspect.words
    chosen = None if pick is None else words[int(pick)]
    return words[int(advised.low)], words[int(advised.high)], chosen

"""Whose word a verdict rests on: who decides the pick, who gave way to whom, who wanted less."""

from __future__ import annotations

from msgspec.structs import replace

from advisor.claims.claimsets import meet, set_of
from advisor.claims.combine import UPPER, USUAL, Verdict, span_of
from advisor.claims.speakers import Said
from advisor.claims.valuesets import Choice, Span
from advisor.knowledge.model import LIMIT_ASPECT, Claim


def against(verdict: Verdict, lost: Said) -> tuple[Said, ...]:
    """Those to whom somebody gave way: each that leaves nothing of the wish, else all together."""
    wish = set_of(lost.claim)
    alone = [s for s in verdict.because if meet(wish, set_of(s.claim)).is_empty]
    return tuple(alone or verdict.because)


def to_itself(verdict: Verdict, lost: Said) -> bool:
    """Whether somebody gave way only to words of its own: then nothing was lost to another.

    A share of a cloth, as its elastane, is another than the fibre that it is mixed with.
    """
    return all(_same(lost, other) for other in against(verdict, lost))


def _same(lost: Said, other: Said) -> bool:
    share = lost.claim.origin.startswith("fibre ")
    return lost.cloths == other.cloths and (not share or lost.claim.origin == other.claim.origin)


def overrun(verdict: Verdict) -> tuple[Said, ...]:
    """Those who are met and would like less than is picked, because another layer needs more.

    It counts where too much harms; each comes back as the wish that it had, up to its best.
    """
    pick = verdict.pick
    if pick is None or not verdict.aspect.gentle or not isinstance(verdict.advised, Span):
        return ()
    found = []
    for said in verdict.because:
        best, low = said.claim.best, span_of(said)[0]
        if best is None or best >= pick:
            continue
        needy = [s for s in verdict.because if span_of(s)[0] > best]
        if any(_same(said, s) for s in needy) or all(s.cloths == said.cloths for s in needy):
            continue
        wish = replace(said.claim, span=(low, best), strength="should")
        found.append(replace(said, claim=wish))
    return tuple(found)


def deciders(verdict: Verdict) -> tuple[Said, ...]:
    """The few claims that make the pick what it is, out of all that agree with it."""
    if verdict.pick is None:
        return verdict.clash[:2] or verdict.because[:2]
    if isinstance(verdict.advised, Choice):
        return _choosers(verdict, int(verdict.pick))[:2]
    low, high, pick = verdict.advised.low, verdict.advised.high, verdict.pick
    aspect = verdict.aspect
    found: list[Said] = []
    for said in verdict.because:
        first, last = said.claim.span or (aspect.low, aspect.high)
        binds_high = last == high < aspect.high
        binds_low = first == low > aspect.low
        wanted = binds_high if aspect.prefer in UPPER else binds_low or binds_high
        if wanted or (said.claim.best == pick and aspect.id != LIMIT_ASPECT):
            found.append(said)
    if aspect.prefer not in UPPER:
        # Who wants just this comes first, then who wants no less, then who wants no more.
        found.sort(key=lambda s: _nearness(s.claim, pick))
    return tuple(found[:2]) or verdict.because[:1]


def _nearness(claim: Claim, pick: float) -> int:
    low, high = claim.span or (None, None)
    if claim.best is not None and claim.best != pick:
        return 4  # it would rather have something else, and its reason speaks of that
    return 0 if claim.best == pick else 1 if low == pick else 2 if high == pick else 3


def _choosers(verdict: Verdict, pick: int) -> tuple[Said, ...]:
    """Those who want this option best, or who rule out what would come before it."""
    if verdict.aspect.excluded:
        return tuple(s for s in verdict.because if bin(s.claim.mask).count("0") > 1)
    best = [s for s in verdict.because if s.claim.best == pick]
    others = [s for s in verdict.because if s.who != USUAL]
    if best and best[0].who == USUAL:
        # Who leaves the fewest to choose from says most of why; then that this one is usual.
        others.sort(key=lambda s: bin(s.claim.mask).count("1"))
        return (*others[:1], *best)
    if best:
        return tuple(best)
    found: dict[Said, None] = {}
    for option in range(pick):
        said = next((s for s in verdict.because if not s.claim.mask >> option & 1), None)
        if said is not None:
            found[said] = None
    if found:
        return tuple(found)
    ordered = sorted(verdict.because, key=lambda s: bin(s.claim.mask).count("1"))
    return tuple(ordered[:1])

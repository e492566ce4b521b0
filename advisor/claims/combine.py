"""Lets the claims of one place on one aspect meet, and picks an answer.

Musts meet first; what they leave is `allowed`, and that never widens when somebody else speaks.
Then shoulds and mays, best source first: one that would leave nothing is given up, and the
verdict remembers it.
"""

from __future__ import annotations

from collections.abc import Callable, Iterable
from dataclasses import dataclass

from advisor.claims.speakers import Said
from advisor.claims.valuesets import Choice, Span
from advisor.knowledge.model import LIMIT_ASPECT, Aspect, Claim

ValueSet = Span | Choice


@dataclass(frozen=True, slots=True)
class Verdict:
    """What may be done in one place on one aspect, what is best, and why.

    Attributes:
        allowed: what every must leaves, without the wishes given up for safety.
        advised: what shoulds leave of it.
        pick: one answer in `advised`; None where nothing suits.
        clash: the musts as they were said, where they leave nothing.
    """

    aspect: Aspect
    allowed: ValueSet
    advised: ValueSet
    pick: float | None
    because: tuple[Said, ...]
    given_up: tuple[Said, ...]
    clash: tuple[Said, ...] = ()


def full_set(aspect: Aspect) -> ValueSet:
    """Everything that an aspect may be."""
    if aspect.kind == "options":
        return Choice.full(len(aspect.words))
    return Span.between(aspect.low, aspect.high)


def set_of(claim: Claim) -> ValueSet:
    """The set that a claim speaks of."""
    return Choice(claim.mask) if claim.span is None else Span(*claim.span)


def meet(one: ValueSet, other: ValueSet) -> ValueSet:
    """What is in both; they are always of one kind."""
    if isinstance(one, Span) and isinstance(other, Span):
        return one & other
    if isinstance(one, Choice) and isinstance(other, Choice):
        return one & other
    raise TypeError(f"a span and a choice cannot meet: {one} {other}")


def decide(aspect: Aspect, said: list[Said]) -> Verdict:
    """Combine everything said in one place on one aspect."""
    ordered = sorted(dict.fromkeys(said), key=_order(aspect))
    musts, shoulds, tastes = (
        [s for s in ordered if s.claim.strength == strength] for strength in _STRENGTHS
    )
    allowed, kept, dropped, clash = _musts(aspect, musts)
    advised, lost = _narrow(allowed, shoulds, kept)
    # Taste chooses among what is advised and takes nothing away from it.
    liked, unliked = _narrow(advised, tastes, kept)
    pick = None if liked.is_empty else _pick(aspect, liked, kept)
    return Verdict(aspect, allowed, advised, pick, tuple(kept), (*dropped, *lost, *unliked), clash)


def _narrow(start: ValueSet, wishes: list[Said], kept: list[Said]) -> tuple[ValueSet, list[Said]]:
    """Let wishes meet in their order; one that would leave nothing is given up."""
    left, lost = start, []
    for wish in wishes:
        narrowed = meet(left, set_of(wish.claim))
        if narrowed.is_empty:
            lost.append(wish)
        else:
            left = narrowed
            kept.append(wish)
    return left, lost


def _musts(
    aspect: Aspect, musts: list[Said]
) -> tuple[ValueSet, list[Said], list[Said], tuple[Said, ...]]:
    """What the musts leave; where that is nothing, what is left without the mere needs."""
    every = full_set(aspect)
    for said in musts:
        every = meet(every, set_of(said.claim))
    if not every.is_empty:
        return every, list(musts), [], ()
    safe = full_set(aspect)
    guards = [s for s in musts if s.claim.risk != "result"]
    for said in guards:
        safe = meet(safe, set_of(said.claim))
    if safe.is_empty or not guards:
        return meet(safe, every), guards, [s for s in musts if s not in guards], tuple(musts)
    kept = list(guards)
    dropped: list[Said] = []
    allowed = safe
    for said in (s for s in musts if s.claim.risk == "result"):
        narrowed = meet(allowed, set_of(said.claim))
        (dropped if narrowed.is_empty else kept).append(said)
        allowed = allowed if narrowed.is_empty else narrowed
    return allowed, kept, dropped, tuple(musts)


_STRENGTHS = {"must": 0, "should": 1, "may": 2}


def _order(aspect: Aspect) -> Callable[[Said], tuple[object, ...]]:
    """Strength, then standing of the source, then the end that the aspect prefers, then words."""

    def key(said: Said) -> tuple[object, ...]:
        claim = said.claim
        if claim.span is None:
            lean = float(bin(claim.mask).count("1"))
        else:
            lean = claim.span[1] if aspect.prefer != "high" else -claim.span[0]
        return (_STRENGTHS[claim.strength], claim.rank, lean, said.key)

    return key


def _pick(aspect: Aspect, advised: ValueSet, kept: list[Said]) -> float:
    if isinstance(advised, Choice):
        for said in kept:
            best = said.claim.best
            if best is not None and int(best) in advised:
                return best
        return float(advised.options()[0])
    bests = [s.claim.best for s in kept if s.claim.best is not None]
    if aspect.id == LIMIT_ASPECT and bests:
        # The lowest published figure is where to start, however weak its source.
        return min(max(min(bests), advised.low), advised.high)
    for best in bests:
        if best in advised:
            return best
    wanted = _end(aspect, advised) if aspect.usual is None else aspect.usual
    return _sold(aspect, advised, min(max(wanted, advised.low), advised.high))


def _sold(aspect: Aspect, advised: Span, wanted: float) -> float:
    """The size nearest to what is wanted that exists and is allowed."""
    fitting = [step for step in aspect.steps if step in advised]
    return min(fitting, key=lambda step: (abs(step - wanted), step)) if fitting else wanted


def _end(aspect: Aspect, advised: Span) -> float:
    if aspect.prefer == "low":
        return advised.low
    if aspect.prefer == "high":
        return advised.high
    middle = (advised.low + advised.high) / 2
    return float(int(middle)) if aspect.kind == "scale" else middle


def narrowed(verdict: Verdict, words: Iterable[str], why: str) -> Verdict:
    """The verdict anew, if what another answer of the garment leaves is wished first of all.

    Args:
        verdict: of an aspect of options.
        words: the options that are left.
        why: what the other answer is, in a sentence.
    """
    mask = sum(1 << verdict.aspect.words.index(word) for word in words)
    claim = Claim(
        verdict.aspect.id,
        None,
        mask,
        None,
        "should",
        "result",
        why,
        ("derived",),
        0,
        "this garment",
    )
    return decide(verdict.aspect, [*verdict.because, *verdict.given_up, Said("here", claim)])


def deciders(verdict: Verdict) -> tuple[Said, ...]:
    """The few claims that make the pick what it is, out of all that agree with it."""
    if verdict.pick is None:
        return verdict.clash[:2]
    if isinstance(verdict.advised, Choice):
        return _choosers(verdict, int(verdict.pick))[:2]
    low, high, pick = verdict.advised.low, verdict.advised.high, verdict.pick
    aspect = verdict.aspect
    found: list[Said] = []
    for said in verdict.because:
        first, last = said.claim.span or (aspect.low, aspect.high)
        binds_high = last == high < aspect.high
        binds_low = first == low > aspect.low
        wanted = binds_high if aspect.prefer == "high" else binds_low or binds_high
        if wanted or (said.claim.best == pick and aspect.id != LIMIT_ASPECT):
            found.append(said)
    if aspect.prefer != "high":
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

"""The set that a claim speaks of, and the part of it that the claim does not let go."""

from __future__ import annotations

from advisor.claims.valuesets import Choice, Span
from advisor.knowledge.model import Aspect, Claim
from advisor.knowledge.purposes import GUARDS

ValueSet = Span | Choice


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


def insisted(aspect: Aspect, claim: Claim) -> ValueSet | None:
    """What a claim does not let go: all of a must, the guarding ends of a should; else None."""
    if claim.strength == "must":
        return set_of(claim)
    if not claim.guards:
        return None
    if claim.span is None:
        return Choice(claim.mask)
    low, high = (end in GUARDS for end in claim.purposes)
    first, last = claim.span
    found = Span(first if low else aspect.low, last if high else aspect.high)
    return None if Span(aspect.low, aspect.high) <= found else found

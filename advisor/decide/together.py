"""Several remedies at once: what they make of the garment, and the cheapest set that cures it all.

Each remedy was proved by itself. Together they are applied one after the other to one copy, and
that copy is judged whole, with the heat through the layers where something is fused.
"""

from __future__ import annotations

import heapq
from collections.abc import Iterator, Sequence

from msgspec import Struct

from advisor.claims.conflicts import Conflict
from advisor.claims.judgement import Advice, Cure, Judgement
from advisor.claims.speakers import HEAT
from advisor.decide.advise import advise
from advisor.decide.evaluate import judge
from advisor.decide.gluing import with_heat_of_glue
from advisor.decide.remedies import attempt, cured
from advisor.knowledge.model import Knowledge
from advisor.project.lines import Line, lines_between

MOST_PROOFS = 6
"""How many sets are judged whole before nothing is offered."""
MOST_STEPS = 5000

Pick = tuple[int, int]
"""The number of a conflict and of one of its remedies, both from 1, as they are printed."""


class Together(Struct, frozen=True):
    """Remedies taken together: which, what they cost, what comes of them, and their lines."""

    picks: tuple[Pick, ...]
    cures: tuple[Cure, ...]
    after: Judgement
    lines: tuple[Line, ...]

    @property
    def cost(self) -> int:
        """The sum of what each costs."""
        return sum(cure.cost for cure in self.cures)


def taken_together(advice: Advice, picks: Sequence[Pick], knowledge: Knowledge) -> Together | None:
    """Some remedies applied at once; None where they spoil each other's cure.

    Args:
        advice: the garment with its conflicts and their cures.
        picks: which remedy of which conflict; each conflict at most once.
        knowledge: what the garment is judged by.
    """
    before = advice.judgement
    conflicts = [before.conflicts[number - 1] for number, _ in picks]
    cures = [advice.cures[c.key][which - 1] for c, (_, which) in zip(conflicts, picks, strict=True)]
    by_id = {remedy.id: remedy for remedy in knowledge.remedies}
    garment = before.garment
    for conflict, cure in zip(conflicts, cures, strict=True):
        made = attempt(by_id[cure.remedy], conflict, before, knowledge, garment)
        garment = garment if made is None else made[0]
    after = with_heat_of_glue(judge(garment, knowledge, before), knowledge)
    if not cured(tuple(conflicts), before, after, knowledge):
        return None
    lines = lines_between(before.garment, garment, knowledge)
    return Together(tuple(picks), tuple(cures), after, lines)


def cure_all(advice: Advice, knowledge: Knowledge) -> Together | None:
    """The cheapest remedies that leave no conflict at all, proved by judging; None without any.

    Where a cause that stood behind another comes out, its own remedies are taken after them.
    """
    if not advice.judgement.conflicts:
        return None
    nearest = None
    for tries, picks in enumerate(_sets(advice)):
        if tries == MOST_PROOFS:
            break
        found = taken_together(advice, picks, knowledge)
        if found is not None and not found.after.conflicts:
            return found
        nearest = nearest or found
    return None if nearest is None else _and_then(nearest, advice, knowledge)


def _and_then(first: Together, advice: Advice, knowledge: Knowledge) -> Together | None:
    """Some remedies, and then those of what they leave in the places of the same conflicts."""
    places = {place for c in advice.judgement.conflicts for place in c.places}
    if not all(set(c.places) <= places for c in first.after.conflicts):
        return None
    left = advise(first.after.garment, knowledge)
    second = cure_all(left, knowledge) if len(left.judgement.conflicts) < MOST_PROOFS else None
    if second is None:
        return None
    lines = lines_between(advice.judgement.garment, second.after.garment, knowledge)
    return Together(first.picks, (*first.cures, *second.cures), second.after, lines)


def _sets(advice: Advice) -> Iterator[tuple[Pick, ...]]:
    """Sets of remedies that between them cure every conflict, cheapest first."""
    options = list(_options(advice))
    many = len(advice.judgement.conflicts)
    share = [
        min((cost / len(cures) for cures, cost, _ in options if i in cures), default=None)
        for i in range(many)
    ]
    if None in share:
        return
    least = [s for s in share if s is not None]
    heap: list[tuple[float, tuple[Pick, ...], frozenset[int]]] = [
        (sum(least), (), frozenset(range(many)))
    ]
    for _ in range(MOST_STEPS):
        if not heap:
            return
        cost, picks, left = heapq.heappop(heap)
        if not left:
            yield tuple(sorted(picks))
            continue
        spent = cost - sum(least[i] for i in left)
        first = min(left)
        for cures, price, pick in options:
            if first in cures and pick[0] not in {number for number, _ in picks}:
                rest = left - cures
                whole = spent + price + sum(least[i] for i in rest)
                heapq.heappush(heap, (whole, (*picks, pick), rest))


def _options(advice: Advice) -> Iterator[tuple[frozenset[int], int, Pick]]:
    """Each remedy: the conflicts that are gone with it, its price, and its numbers."""
    conflicts = advice.judgement.conflicts
    for i, conflict in enumerate(conflicts):
        for j, cure in enumerate(advice.cures.get(conflict.key, ())):
            left = {
                cause
                for c in cure.after.conflicts
                for one in (c, *c.also)
                for cause in (one.cause, *one.behind)
            }
            gone = {
                k
                for k, other in enumerate(conflicts)
                if not _of_heat(other) and other.cause not in left
            }
            yield frozenset(gone | {i}), cure.cost, (i + 1, j + 1)


def _of_heat(conflict: Conflict) -> bool:
    """Whether only the heat model knows of it, which has not judged the single cures."""
    return conflict.clash[0].claim.origin == HEAT

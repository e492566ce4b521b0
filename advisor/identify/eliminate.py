"""Finds out what a cloth may be made of, by elimination over published observations.

There are no probabilities: an answer rules out each fibre that sources know by another answer and
not by this one. A fibre that no source speaks of is never ruled out. So what remains is a meet of
sets: one observation more never adds a fibre, and their order never matters.
"""

from __future__ import annotations

from collections.abc import Collection, Iterable, Mapping
from itertools import combinations

from msgspec import Struct

from advisor.knowledge.model import Mix
from advisor.knowledge.observations import Observation

LABEL = "label"
FIRST = (LABEL, "build", "strip", "rubbery")
"""What is looked at before anything is burnt."""
MOST_PAIRS = 400
"""Pairs of fibres that are kept as an explanation; more would say nothing: estimate."""

Observations = Mapping[str, Observation]


class Seen(Struct, frozen=True, order=True):
    """What was seen: an observation and its answer; of a label, the fibres that it names."""

    test: str
    answer: str
    mix: Mix = ()


class Finding(Struct, frozen=True):
    """What remains, and why the rest does not.

    Attributes:
        remain: the fibres that fit every observation, in the order that they were given.
        blend: the mix that a label names, where its fibres together explain everything.
        out: for each fibre ruled out, the observations that do so.
        weak: fibres that memory alone rules out.
        clash: the fewest observations that no one fibre fits, where nothing remains.
        pairs: two fibres that together explain everything, where no one fibre does.
    """

    seen: tuple[Seen, ...]
    remain: tuple[str, ...]
    blend: Mix
    out: dict[str, tuple[Seen, ...]]
    weak: tuple[str, ...]
    clash: tuple[Seen, ...]
    pairs: tuple[tuple[str, str], ...]

    def mixes(self) -> tuple[Mix, ...]:
        """What the cloth may be, as a project holds it; nothing where all is contradicted."""
        return (self.blend,) if self.blend else tuple(((fibre, None),) for fibre in self.remain)


class Proposal(Struct, frozen=True):
    """A test worth doing: what remains after each answer, and the most that can remain."""

    test: str
    outcomes: tuple[tuple[tuple[str, ...], tuple[str, ...]], ...]
    worst: int


def fits(seen: Seen, fibre: str, observations: Observations) -> bool:
    """Whether sources allow that a cloth of this fibre alone is seen so."""
    if seen.test == LABEL:
        return not seen.mix or any(fibre == named for named, _ in seen.mix)
    observation = observations[seen.test]
    answer = observation.answers[seen.answer]
    return not answer.fibres or fibre in answer.fibres or fibre not in observation.named


def testable(fibres: Iterable[str], observations: Observations) -> list[str]:
    """The fibres of which some test says anything: horn and shell are turned, and never spun."""
    named = {fibre for observation in observations.values() for fibre in observation.named}
    return [fibre for fibre in fibres if fibre in named]


def identify(seen: Iterable[Seen], fibres: Collection[str], observations: Observations) -> Finding:
    """Eliminate.

    Args:
        seen: observations in any order; twice the same changes nothing.
        fibres: the ids of all fibres that it might be.
        observations: what can be seen, by id.
    """
    given = tuple(sorted(set(seen)))
    out: dict[str, tuple[Seen, ...]] = {}
    fibres = testable(fibres, observations)
    for fibre in fibres:
        against = tuple(s for s in given if not fits(s, fibre, observations))
        if against:
            out[fibre] = against
    remain = tuple(fibre for fibre in fibres if fibre not in out)
    blend = _blend(given, observations)
    weak = tuple(
        fibre
        for fibre, against in out.items()
        if not any(_published(s, observations) for s in against)
    )
    clash: tuple[Seen, ...] = ()
    pairs: tuple[tuple[str, str], ...] = ()
    if not remain and not blend:
        clash = _smallest_clash(given, fibres, observations)
        pairs = _pairs(given, fibres, observations)
    return Finding(given, remain, blend, out, weak, clash, pairs)


def _published(seen: Seen, observations: Observations) -> bool:
    return seen.test == LABEL or observations[seen.test].answers[seen.answer].published


def _blend(given: tuple[Seen, ...], observations: Observations) -> Mix:
    """The mix of the only label, if each observation fits one of its fibres."""
    labels = {s.mix for s in given if s.test == LABEL and s.mix}
    if len(labels) != 1:
        return ()
    mix = labels.pop()
    named = [fibre for fibre, _ in mix]
    explained = all(any(fits(s, fibre, observations) for fibre in named) for s in given)
    return mix if len(named) > 1 and explained else ()


def _smallest_clash(
    given: tuple[Seen, ...], fibres: Collection[str], observations: Observations
) -> tuple[Seen, ...]:
    for size in range(2, len(given) + 1):
        for some in combinations(given, size):
            if not any(all(fits(s, f, observations) for s in some) for f in fibres):
                return some
    return given


def _pairs(
    given: tuple[Seen, ...], fibres: Collection[str], observations: Observations
) -> tuple[tuple[str, str], ...]:
    able = {f: frozenset(s for s in given if fits(s, f, observations)) for f in fibres}
    everything = frozenset(given)
    found = [
        (one, other)
        for one, other in combinations(fibres, 2)
        if able[one] | able[other] == everything
    ]
    return tuple(found[:MOST_PAIRS])


def proposals(
    finding: Finding, observations: Observations, refused: Collection[str] = ()
) -> list[Proposal]:
    """The tests that still split what remains, the best first.

    The best is the one after which the fewest can remain, whatever is seen; then the cheaper.

    Args:
        finding: what remains so far.
        observations: what can be seen, by id.
        refused: observations, or kinds of observation, that are not to be proposed.
    """
    done = {s.test for s in finding.seen}
    found = []
    for observation in observations.values():
        waits = observation.after and observation.after not in done
        if {observation.id, observation.kind} & {*done, *refused} or waits:
            continue
        proposal = propose(observation, finding.remain)
        if proposal is not None:
            found.append(proposal)
    return sorted(found, key=lambda p: (p.worst, observations[p.test].cost, p.test))


def propose(observation: Observation, remain: tuple[str, ...]) -> Proposal | None:
    """What a test would leave of some fibres; None where no answer parts them."""
    left: dict[tuple[str, ...], list[str]] = {}
    for answer in observation.answers.values():
        if answer.vague or not answer.fibres:
            continue
        seen = Seen(observation.id, answer.word)
        kept = tuple(f for f in remain if fits(seen, f, {observation.id: observation}))
        if answer.fibres.intersection(kept):  # where sources are silent, nothing is learnt
            left.setdefault(kept, []).append(answer.word)
    if all(len(kept) == len(remain) for kept in left):
        return None
    outcomes = tuple((tuple(words), kept) for kept, words in left.items())
    return Proposal(observation.id, outcomes, max(len(kept) for kept in left))

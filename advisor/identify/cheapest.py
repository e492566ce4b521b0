"""The one cheapest test that would free the most of a cloth whose fibre nobody has named.

A test is judged by the fibres that the cloth may be: for each answer those that can give it
remain, and the tenderest of them sets the iron. Asking and reading a label are always tried first
and so are not proposed here.
"""

from __future__ import annotations

from msgspec import Struct

from advisor.decide.unknowns import Unknown
from advisor.identify.eliminate import LABEL, Seen, fits
from advisor.knowledge.model import Mix
from advisor.knowledge.observations import Observation


class Freed(Struct, frozen=True):
    """What an answer of a test would allow: the mixes that remain and the iron they bear, °C."""

    answers: tuple[str, ...]
    mixes: tuple[Mix, ...]
    limit: float


class CheapestTest(Struct, frozen=True):
    """A test and those of its answers that would free something, the hottest first."""

    test: str
    freed: tuple[Freed, ...]


def cheapest_test(unknown: Unknown, observations: dict[str, Observation]) -> CheapestTest | None:
    """The test that frees the most of the candidates, of equal ones the cheapest; None of no use.

    Args:
        unknown: the cloth with the iron limit of each of its candidates.
        observations: what can be seen, by id.
    """
    found: list[tuple[tuple[float, ...], str, tuple[Freed, ...]]] = []
    for observation in observations.values():
        if observation.id == LABEL or observation.after:
            continue
        freed = _freed(unknown, observation)
        if freed:
            mixes = {mix for some in freed for mix in some.mixes}
            gain = sum(dict(unknown.candidates)[mix] - unknown.limit for mix in mixes)
            found.append(((-len(mixes), observation.cost, -gain), observation.id, freed))
    if not found:
        return None
    _, test, freed = min(found, key=lambda row: (row[0], row[1]))
    return CheapestTest(test, freed)


def _freed(unknown: Unknown, observation: Observation) -> tuple[Freed, ...]:
    left: dict[tuple[Mix, ...], list[str]] = {}
    for answer in observation.answers.values():
        if answer.vague or not answer.fibres:
            continue
        seen = Seen(observation.id, answer.word)
        kept = tuple(
            mix
            for mix, _ in unknown.candidates
            if any(fits(seen, fibre, {observation.id: observation}) for fibre, _ in mix)
        )
        if any(fibre in answer.fibres for mix in kept for fibre, _ in mix):
            left.setdefault(kept, []).append(answer.word)
    limits = dict(unknown.candidates)
    rows = [Freed(tuple(words), kept, min(limits[m] for m in kept)) for kept, words in left.items()]
    freeing = [row for row in rows if row.limit > unknown.limit]
    return tuple(sorted(freeing, key=lambda row: (-row.limit, row.answers)))

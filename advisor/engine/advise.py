"""The whole way from a garment to advice: gather, combine, find conflicts, try remedies."""

from __future__ import annotations

from dataclasses import dataclass, field

from advisor.engine.claims import Gathered, Place, gather
from advisor.engine.combine import Verdict, decide
from advisor.engine.conflicts import Conflict, find_conflicts
from advisor.engine.work.bulk import add_bulk
from advisor.knowledge.model import Knowledge
from advisor.project.garment import Garment


@dataclass(frozen=True, slots=True)
class Judgement:
    """What was said of a garment, what came of it, and where it clashes."""

    garment: Garment
    gathered: Gathered
    verdicts: dict[Place, dict[str, Verdict]]
    conflicts: tuple[Conflict, ...]


@dataclass(frozen=True, slots=True)
class Cure:
    """A remedy that was applied and re-run: its conflict is gone and none is new."""

    remedy: str
    words: dict[str, str]
    after: Judgement
    effort: int
    look: int


@dataclass(frozen=True, slots=True)
class Advice:
    """A judgement with the cures of each of its conflicts, cheapest first."""

    judgement: Judgement
    cures: dict[tuple[str, str], tuple[Cure, ...]] = field(default_factory=dict)


def judge(garment: Garment, knowledge: Knowledge) -> Judgement:
    """Combine everything said about a garment; no remedies are tried."""
    gathered = gather(garment, knowledge)
    order = {aspect: i for i, aspect in enumerate(knowledge.aspects)}
    verdicts = {
        place: {
            name: decide(knowledge.aspects[name], by_aspect[name])
            for name in sorted(by_aspect, key=order.__getitem__)
        }
        for place, by_aspect in gathered.said.items()
    }
    add_bulk(garment, gathered, verdicts, knowledge)
    return Judgement(garment, gathered, verdicts, tuple(find_conflicts(verdicts)))


def advise(garment: Garment, knowledge: Knowledge) -> Advice:
    """Judge a garment and look for the cures of its conflicts."""
    judgement = judge(garment, knowledge)
    if not judgement.conflicts:
        return Advice(judgement)
    from advisor.engine.remedies import cures_of

    return Advice(
        judgement, {c.key: cures_of(c, judgement, knowledge) for c in judgement.conflicts}
    )

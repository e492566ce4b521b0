"""The whole way from a garment to advice: judge it, and try the remedies of its conflicts."""

from __future__ import annotations

from dataclasses import dataclass, field

from advisor.engine.judge import Cure, Judgement, judge
from advisor.knowledge.model import Knowledge
from advisor.project.garment import Garment


@dataclass(frozen=True, slots=True)
class Advice:
    """A judgement with the cures of each of its conflicts, cheapest first."""

    judgement: Judgement
    cures: dict[tuple[str, str], tuple[Cure, ...]] = field(default_factory=dict)


def advise(garment: Garment, knowledge: Knowledge) -> Advice:
    """Judge a garment and look for the cures of its conflicts."""
    judgement = judge(garment, knowledge)
    if not judgement.conflicts:
        return Advice(judgement)
    from advisor.engine.remedies import cures_of

    tried: list[Judgement] = []
    return Advice(
        judgement, {c.key: cures_of(c, judgement, knowledge, tried) for c in judgement.conflicts}
    )

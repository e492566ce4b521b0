"""The whole way from a garment to advice: judge it, and try the remedies of its conflicts."""

from __future__ import annotations

from advisor.claims.judgement import Advice, Judgement
from advisor.decide.apart import judge_again
from advisor.knowledge.model import Knowledge
from advisor.project.garment import Garment


def advise(garment: Garment, knowledge: Knowledge) -> Advice:
    """Judge a garment and look for the cures of its conflicts."""
    knowledge = knowledge.told(garment.units)
    judgement = judge_again(garment, knowledge)
    if not judgement.conflicts:
        return Advice(judgement)
    from advisor.decide.remedies import cures_of

    tried: list[Judgement] = []
    return Advice(
        judgement, {c.key: cures_of(c, judgement, knowledge, tried) for c in judgement.conflicts}
    )

"""What a guard says of how an iron moves: none rests, or none steams, where that is not borne.

A maker may fix how she presses. Against a cloth that bears no dot of the dial, or no moisture at
all, that is a clash like any other, though its file speaks of degrees and drops only.
"""

from __future__ import annotations

from typing import Final

from msgspec.structs import replace

from advisor.claims.speakers import Said, is_heat_limit
from advisor.craft.irondial import mark_for
from advisor.knowledge.model import Knowledge

MOTION: Final = "press.motion"
RESTING: Final = ("lift and lower", "glide")
STEAMING: Final = ("hover with steam",)
COLD_WHY: Final = "It bears no dot of the dial, so no iron is set down on it."


def unrested(said: Said, knowledge: Knowledge) -> list[Said]:
    """What a cloth's limit of heat, or its need to stay dry, says of the motion of the iron."""
    claim = said.claim
    if claim.span is None or MOTION not in knowledge.aspects:
        return []
    if is_heat_limit(claim) and mark_for(claim.span[1]) is None:
        return [_without(RESTING, said, COLD_WHY, knowledge)]
    dry = claim.aspect == "press.moisture" and claim.guards and claim.span[1] <= 0
    if dry and claim.strength == "must":
        return [_without(STEAMING, said, claim.why, knowledge)]
    return []


def _without(options: tuple[str, ...], said: Said, why: str, knowledge: Knowledge) -> Said:
    words = knowledge.aspects[MOTION].words
    mask = sum(1 << at for at, word in enumerate(words) if word not in options)
    ends = ("cloth", "cloth")
    claim = replace(said.claim, aspect=MOTION, span=None, mask=mask, best=None, why=why, ends=ends)
    return replace(said, claim=claim)

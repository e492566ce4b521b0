"""A cloth that is steamed into shape: what its fibre needs of a hot iron it only wishes for.

A rib or a looped cloth is flattened by a sole plate that is set down on it. Its fibre may be one
that takes no lasting press from a cool iron; made up like this it is not pressed at all.
"""

from __future__ import annotations

from dataclasses import replace

from advisor.knowledge.model import Claim, Entry, Knowledge

HOVER = "hover with steam"


def is_steamed(entry: Entry, knowledge: Knowledge) -> bool:
    """Whether a cloth, by its own word, is best steamed without the weight of the iron."""
    motion = knowledge.aspects.get("press.motion")
    at = float(motion.words.index(HOVER)) if motion and HOVER in motion.words else -1.0
    return any(c.aspect == "press.motion" and c.best == at for c in entry.claims)


def as_wish(claim: Claim) -> Claim:
    """A need of heat as a wish; what guards stays what it is."""
    if claim.guards or claim.risk != "result":
        return claim
    return replace(claim, strength="should", risk="", ends=None)

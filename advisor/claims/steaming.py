"""A cloth that needs no hard press: what its fibre needs of a hot iron it only wishes for.

A rib or a looped cloth is flattened by a sole plate that is set down on it, and a knit of cotton
keeps no fold as a poplin does: its loops hang out (common practice). Its fibre may be one that
takes no lasting press from a cool iron; made up like this it lies flat without.
"""

from __future__ import annotations

from msgspec.structs import replace

from advisor.knowledge.model import Claim, Entry, Knowledge

HOVER = "hover with steam"


def lies_unpressed(entry: Entry, knowledge: Knowledge) -> bool:
    """Whether a cloth is knitted, or by its own word best steamed without the iron's weight."""
    if entry.kind == "cloth" and entry.structure == "knit":
        return True
    motion = knowledge.aspects.get("press.motion")
    at = float(motion.words.index(HOVER)) if motion and HOVER in motion.words else -1.0
    return any(c.aspect == "press.motion" and c.best == at for c in entry.claims)


def as_wish(claim: Claim) -> Claim:
    """A need of heat as a wish; what guards stays what it is."""
    if claim.guards or claim.risk != "result":
        return claim
    return replace(claim, strength="should", risk="", ends=None)

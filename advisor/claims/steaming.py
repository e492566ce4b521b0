"""A cloth that needs no hard press: what its fibre needs of a hot iron it only wishes for.

A rib or a looped cloth is flattened by a sole plate that is set down on it, and a knit of cotton
keeps no fold as a poplin does: its loops hang out (common practice). Its fibre may be one that
takes no lasting press from a cool iron; made up like this it lies flat without.
"""

from __future__ import annotations

from collections.abc import Mapping
from typing import TYPE_CHECKING

from msgspec.structs import replace

from advisor.craft.irondial import starts_too_cool
from advisor.knowledge.model import COLD, Claim, Entry, Knowledge

if TYPE_CHECKING:
    from advisor.claims.combine import Verdict

HOVER = "hover with steam"
ASPECTS = ("temperature", "moisture", "motion")
STEAMY = 2.0
"""The degree of moisture that is steam."""


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


def nothing_between(by_aspect: dict[str, Verdict]) -> None:
    """Steam held above a place comes through no press cloth: one way of pressing is told."""
    motion = by_aspect.get("press.motion")
    if motion and motion.pick == float(motion.aspect.words.index(HOVER)) and not motion.clash:
        by_aspect.pop("press.cloth", None)


def for_some(by_aspect: Mapping[str, Verdict]) -> bool:
    """Whether some layers wish for steam held above them, and the rest would have less of it."""
    heat, moist, motion = (by_aspect.get(f"press.{it}") for it in ASPECTS)
    if heat is None or moist is None or motion is None:
        return False
    hover = float(motion.aspect.words.index(HOVER))
    words = [(s, v) for v in (heat, moist, motion) for s in (*v.because, *v.given_up)]
    steamed = {c for s, v in words for c in s.cloths if v is motion and s.claim.best == hover}
    if not steamed or steamed.issuperset(c for s, _ in words for c in s.cloths):
        return False
    start = heat.pick or COLD
    drips = start > COLD and starts_too_cool(start)
    best = [s.claim.best for s in moist.because if s.claim.best is not None]
    drier = bool(best) and (moist.pick or 0.0) < STEAMY  # with no best said, any that is borne does
    return drips or moist.pick is None or drier

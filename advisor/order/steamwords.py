"""What a step says of an iron that is not set down: who reads only the order would rest it."""

from __future__ import annotations

from advisor.claims.collect import Place
from advisor.claims.steaming import HOVER
from advisor.claims.valuesets import Choice
from advisor.order.setups import Setups
from advisor.units.sentences import render

MOTION = "press.motion"
STEAMED = "Steam {name} now, loose pieces and what is sewn of it; {how} not in yet."
"""The sentence of a cloth that is pressed by itself, and no more than with steam."""


def held_off(does: str, place: Place, setups: Setups) -> str:
    """A pressing in words, with how far the iron is held off where it only steams."""
    return _off(does, place, setups) if setups.word(place, MOTION) == HOVER else does


def steamed_alone(cloth: str, setups: Setups) -> bool:
    """Whether a cloth that is pressed by itself is only steamed.

    So is what is steamed in a seam of its own, and what by its own word is flattened by weight.
    """
    verdict = setups.verdict(setups.alone((cloth, cloth)), MOTION)
    claims = setups.knowledge.entries[setups.garment.cloths[cloth].entry].claims
    if verdict is None or not isinstance(verdict.advised, Choice):
        return False
    at = verdict.aspect.words.index(HOVER)
    best = any(claim.aspect == MOTION and claim.best == at for claim in claims)
    return verdict.pick == at or (best and at in verdict.advised.options())


def off_alone(does: str, cloth: str, setups: Setups) -> str:
    """The same of a cloth that is steamed by itself."""
    return _off(does, setups.alone((cloth, cloth)), setups)


def _off(does: str, place: Place, setups: Setups) -> str:
    verdict = setups.verdict(place, MOTION)
    how = HOVER if verdict is None else verdict.aspect.labels.get(HOVER, HOVER)
    return f"{does.rstrip('.')}; the iron {render(how, setups.garment.units)}."

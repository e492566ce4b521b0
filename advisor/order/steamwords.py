"""What a step says of an iron that is not set down: who reads only the order would rest it."""

from __future__ import annotations

from advisor.claims.collect import Place
from advisor.claims.steaming import HOVER
from advisor.claims.valuesets import Choice
from advisor.order.setups import Setups
from advisor.units.sentences import render

MOTION = "press.motion"
PRESSED, STEAMED = "Press {} now with the heat and moisture that it wants", "Steam {} now"


def held_off(does: str, place: Place, setups: Setups) -> str:
    """A pressing in words, with how far the iron is held off where it only steams."""
    return _off(does, place, setups) if setups.word(place, MOTION) == HOVER else does


def only_steamed(does: str, verb: str, cloth: str, setups: Setups) -> tuple[str, str]:
    """How a cloth is pressed by itself, and what that is called: some are only steamed.

    Those are what is steamed in a seam of its own, and what by its own word is flattened by weight.
    """
    place = setups.alone((cloth, cloth))
    verdict = setups.verdict(place, MOTION)
    claims = setups.knowledge.entries[setups.garment.cloths[cloth].entry].claims
    if verdict is None or not isinstance(verdict.advised, Choice):
        return does, verb
    at = verdict.aspect.words.index(HOVER)
    best = at in verdict.advised.options() and any(
        claim.aspect == MOTION and claim.best == at for claim in claims
    )
    if verdict.pick != at and not best:
        return does, verb
    told = _off(does, place, setups)
    return told.replace(PRESSED.format(cloth), STEAMED.format(cloth)), "steam"


def _off(does: str, place: Place, setups: Setups) -> str:
    verdict = setups.verdict(place, MOTION)
    how = HOVER if verdict is None else verdict.aspect.labels.get(HOVER, HOVER)
    return f"{does.rstrip('.')}; the iron {render(how, setups.garment.units)}."

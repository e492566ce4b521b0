"""What a step says of an iron that is not set down: who reads only the order would rest it."""

from __future__ import annotations

from advisor.claims.collect import Place
from advisor.claims.steaming import HOVER
from advisor.order.setups import Setups
from advisor.units.sentences import render

MOTION = "press.motion"


def held_off(does: str, place: Place, setups: Setups) -> str:
    """A pressing in words, with how far the iron is held off where it only steams."""
    verdict = setups.verdict(place, MOTION)
    if verdict is None or setups.word(place, MOTION) != HOVER:
        return does
    how = verdict.aspect.labels.get(HOVER, HOVER)
    return f"{does.rstrip('.')}; the iron {render(how, setups.garment.units)}."

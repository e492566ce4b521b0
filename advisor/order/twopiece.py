"""The two seams of a sleeve in two pieces: the inner one is joined and pressed in the flat."""

from __future__ import annotations

from collections.abc import Sequence
from typing import Final

from advisor.knowledge import nouns
from advisor.order.kinds import SeamPlace, same_unit
from advisor.project.placing import singular_words

UNDERARM: Final = "underarm"
ROUND_A_ROLL: Final = ", a roll in the sleeve: it is a tube by now"


def outer_of(place: SeamPlace, places: Sequence[SeamPlace]) -> SeamPlace | None:
    """The outer seam of the sleeve of which a place is the inner one; None of every other."""
    if not _of_a_sleeve(place, nouns.INNER_SLEEVE):
        return None
    others = (p for p in places if _of_a_sleeve(p, nouns.OUTER_SLEEVE) and same_unit(p, place))
    return next((p for p in others if set(p.cloths) & set(place.cloths)), None)


def closes_the_sleeve(place: SeamPlace, places: Sequence[SeamPlace]) -> bool:
    """Whether it is the outer seam of such a sleeve, which makes a tube of it."""
    return any(outer_of(p, places) == place for p in places)


def _of_a_sleeve(place: SeamPlace, words: frozenset[str]) -> bool:
    seam = place.role.id == UNDERARM and place.kind.family == "seam"
    return seam and bool(words & set(singular_words(place.name)))

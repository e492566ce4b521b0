"""The facts of a place that the rooms of single things tell: lace, linings, sashes, slits."""

from __future__ import annotations

from collections.abc import Callable
from typing import TYPE_CHECKING, TypeAlias

from advisor.order import (
    ascut,
    bandrings,
    cartridge,
    channels,
    clipped,
    collarsin,
    ended,
    facedrun,
    felled,
    flapsclosed,
    flatsleeve,
    hoodlining,
    hosts,
    madeup,
    nailed,
    pocketbags,
    quilting,
    rain,
    sashes,
    shearing,
    slits,
    trimmed,
)

if TYPE_CHECKING:
    from advisor.order.facts import Facts
    from advisor.order.kinds import SeamPlace

Answers: TypeAlias = dict[str, Callable[[], bool]]
"""What may be asked of a place, by the name of the fact."""

ROOMS = (
    ascut,
    cartridge,
    channels,
    clipped,
    bandrings,
    ended,
    facedrun,
    slits,
    madeup,
    felled,
    collarsin,
    shearing,
    sashes,
    flapsclosed,
    flatsleeve,
    hoodlining,
    trimmed,
    hosts,
    nailed,
    pocketbags,
    quilting,
    rain,
)


def facts_of(place: SeamPlace, facts: Facts) -> Answers:
    """Every such fact by its name, each worked out when it is asked."""
    return {name: told for room in ROOMS for name, told in room.answers(place, facts).items()}


class AskedOnce:
    """The facts of places that stay as they are: each is worked out when it is first asked."""

    def __init__(self, answers: Callable[[SeamPlace], Answers]) -> None:
        """`answers` makes all that may be asked of a place."""
        self._answers = answers
        self._known: dict[int, tuple[SeamPlace, Answers, dict[str, bool]]] = {}

    def of(self, fact: str, place: SeamPlace) -> bool:
        """A fact of a place."""
        known = self._known.get(id(place))
        if known is None:  # the place is kept with them, or another might come to have its number
            known = self._known[id(place)] = (place, self._answers(place), {})
        _, answers, told = known
        if fact not in told:
            told[fact] = answers[fact]()
        return told[fact]

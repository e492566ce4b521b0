"""The facts of a place that the rooms of single things tell: lace, linings, sashes, slits."""

from __future__ import annotations

from collections.abc import Callable
from typing import TYPE_CHECKING

from advisor.order import (
    ascut,
    bandrings,
    channels,
    clipped,
    collarsin,
    companions,
    ended,
    felled,
    flatsleeve,
    madeup,
    nailed,
    pocketbags,
    quilting,
    sashes,
    shearing,
    slits,
    trimmed,
)

if TYPE_CHECKING:
    from advisor.order.facts import Facts
    from advisor.order.kinds import SeamPlace

ROOMS = (
    ascut,
    channels,
    clipped,
    bandrings,
    ended,
    slits,
    madeup,
    felled,
    collarsin,
    shearing,
    sashes,
    flatsleeve,
    trimmed,
    companions,
    nailed,
    pocketbags,
    quilting,
)


def facts_of(place: SeamPlace, facts: Facts) -> dict[str, Callable[[], bool]]:
    """Every such fact by its name, each worked out when it is asked."""
    return {name: told for room in ROOMS for name, told in room.answers(place, facts).items()}

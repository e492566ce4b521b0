"""What is made up by itself before a seam sets it: a collar, its stand, the edge of a cuff."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from typing import TYPE_CHECKING, Final

from advisor.order.kinds import SeamPlace
from advisor.order.lapels import turned_back
from advisor.project.stands import SET_BY, SETTING

if TYPE_CHECKING:
    from advisor.order.facts import Facts

FACED, CUFF, CUFF_EDGE = "faced-edge", "cuff", "cuff-edge"
ALONE: Final = frozenset({"collar", "stand", CUFF_EDGE})
"""Roles of an edge that is sewn and turned while its piece belongs to nothing yet."""


def answers(place: SeamPlace, facts: Facts) -> dict[str, Callable[[], bool]]:
    """The facts of a place that are told here."""
    return {
        "set by its own seam": lambda: place.seam.placed_by == SET_BY,
        "sets a stand": lambda: place.seam.placed_by == SETTING,
    }


def ends_made(place: SeamPlace, places: Sequence[SeamPlace]) -> bool:
    """Whether another place sews the outer edge of a cuff and closes its ends with that."""
    return place.kind.id == CUFF and any(p.role.id == CUFF_EDGE for p in places)


def made_up(place: SeamPlace, places: Sequence[SeamPlace]) -> bool:
    """Whether it is turned and pressed before it is set.

    Beside a lapel the edge of a collar is sewn on in one run with that, when the collar is set.
    """
    alone = place.kind.id == FACED and place.role.id in ALONE
    return alone and not any(turned_back(p, places) for p in places)

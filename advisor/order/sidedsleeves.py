"""Sleeves that are set in flat, because their own side is said to run over the armhole."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace
from typing import TYPE_CHECKING, Final

if TYPE_CHECKING:
    from advisor.order.kinds import SeamPlace

SIDE, ARMHOLE, UNDERARM = "side", "armhole", "underarm"
ROLES: Final = (SIDE, ARMHOLE, UNDERARM)


def with_sleeves_flat(places: Sequence[SeamPlace]) -> tuple[SeamPlace, ...]:
    """The places, each sleeve seam running over the armhole that its own side is said to cross.

    A sleeve that is closed first cannot be set into an armhole whose side is still open.
    """
    return tuple(_over_its_armhole(p, places) if p.role.id == UNDERARM else p for p in places)


def _over_its_armhole(sleeve: SeamPlace, places: Sequence[SeamPlace]) -> SeamPlace:
    own = [p for p in places if p.unit == sleeve.unit and p.seam.part == sleeve.seam.part]
    sides = [p for p in own if p.role.id == SIDE]
    crossed = frozenset(
        p.name
        for p in own
        if p.role.id == ARMHOLE
        and set(p.cloths) & set(sleeve.cloths)
        and sleeve.name not in (p.crosses or ())
        and any(p.name in (side.crosses or ()) for side in sides)
    )
    return replace(sleeve, crosses=(sleeve.crosses or frozenset()) | crossed) if crossed else sleeve

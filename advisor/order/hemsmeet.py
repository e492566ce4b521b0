"""A lower edge of two kinds: one part is turned up, and the next is left as it is cut."""

from __future__ import annotations

from collections.abc import Sequence
from typing import Final

from advisor.order.kinds import SeamPlace
from advisor.order.untried import DOWN_THE_BODY
from advisor.project.linings import worn_under

LEFT_RAW, HEM = "hem-left-raw", "hem"
LEVEL: Final = ", level with the finished fold of {}"
ENDS: Final = (
    "; where it meets {}, which is left as cut, open the end of the seam as far as the hem is "
    "deep, turn the hem in behind it and tack it to the allowance, its fold level with that edge"
)

ABOVE_IT: Final = ", two fingers' breadth above the finished edge of {}"


def under_a_hem(place: SeamPlace, places: Sequence[SeamPlace]) -> str:
    """Where a skirt ends that is worn under another; "" of every other hem."""
    if not worn_under(place.seam) or not place.role.last:
        return ""
    hems = (p for p in places if p.role.id == HEM and p.unit == "shell")
    over = next((p.name for p in hems if not worn_under(p.seam)), "")
    return ABOVE_IT.format(over) if over else ""


def turned_hem(place: SeamPlace) -> bool:
    """Whether it ends the shell below and is turned up, bound or faced there."""
    hem = place.kind.id == HEM and place.unit == "shell" and place.role.last
    return hem and place.method.id != LEFT_RAW


def beside_raw(place: SeamPlace, places: Sequence[SeamPlace]) -> str:
    """What a hem is told of the one beside it that is finished in the other way."""
    own = [p for p in places if p.kind.id == HEM and p.unit == "shell" and p.role.last]
    own = [p for p in own if p.alone == place.alone and p.seam.part == place.seam.part]
    if place not in own:
        return ""
    raw = place.method.id == LEFT_RAW
    unlike = (p for p in own if (p.method.id == LEFT_RAW) != raw)
    others = [p.name for p in unlike if _side_by_side(p, place, places)]
    return (LEVEL if raw else ENDS).format(" and ".join(others)) if others else ""


def _side_by_side(one: SeamPlace, other: SeamPlace, places: Sequence[SeamPlace]) -> bool:
    """Whether a seam that runs down joins the two: layers that hang over each other have none."""
    down = (set(p.cloths) for p in places if p.kind.id == "seam" and p.role.id in DOWN_THE_BODY)
    ours, theirs = set(one.cloths), set(other.cloths)
    return any(cloths & ours and cloths & theirs - ours for cloths in down)

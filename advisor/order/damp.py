"""Which cloths, joined by then, a damp press nearby would leave with a ring."""

from __future__ import annotations

from collections.abc import Sequence

from advisor.claims.valuesets import Span
from advisor.order.easing import cap_out
from advisor.order.kinds import related
from advisor.order.nearness import clear_of_hem, far_apart
from advisor.order.precedences import comes_in
from advisor.order.setups import Setups
from advisor.order.tasks import Task

STEAM, THROUGH_A_CLOTH = "steam", " through a dry cloth, once a corner has come out clean"
TWICE = ", twice over, dry and cold between"
SHRINKS, MUCH = "shrinks", 3
MOISTURE, DRY = "press.moisture", "dry"
MARKED, LININGS = "water marks", "linings"


def damp_near(task: Task, before: Sequence[Task], setups: Setups) -> frozenset[str]:
    """The cloths that tasks before a damp press have joined near it, and that want it dry."""
    iron, place = task.step.iron, task.place
    if iron is None or iron.moisture == DRY or place is None or cap_out(task):
        return frozenset()
    return frozenset(
        name
        for other in before
        if other.place is not None
        and related(place, other.place)
        and not far_apart(place, other.place, setups.garment)
        for name in (comes_in(other) & set(other.place.cloths))
        - clear_of_hem(place, other.place, setups.garment)
        if name not in task.cloths and marks_from_drops(name, setups)
    )


def marks_from_drops(name: str, setups: Setups) -> bool:
    """Whether a cloth that is seen takes rings from water, and is pressed dry by itself."""
    cloth = setups.garment.cloths[name]
    entry = setups.knowledge.entries[cloth.entry]
    level = cloth.traits.get(MARKED) or entry.traits.get(MARKED, (0, 0))
    if not level[0] or entry.family == LININGS:
        return False
    found = setups.judged(setups.alone((name, name))).get(MOISTURE)
    return found is not None and isinstance(found.advised, Span) and not found.advised.high


def shrunk(way: str, cloth: str, setups: Setups) -> str:
    """How a cloth is shrunk: by steam twice over where it shrinks much: some is left."""
    if way != STEAM:
        return way
    entry, own = setups.knowledge.entries[setups.garment.cloths[cloth].entry], setups.garment.cloths
    much = (own[cloth].traits.get(SHRINKS) or entry.traits.get(SHRINKS, (0, 0)))[0] >= MUCH
    through = THROUGH_A_CLOTH if marks_from_drops(cloth, setups) else ""
    return f"{way}{through}{TWICE if much else ''}"

"""An iron that starts cool enough for what is in beside it is turned no hotter than that bears.

What a place bears by itself is told up to the end of its mark; lace, bones or a film that are in
by then may bear less, and then that is the most.
"""

from __future__ import annotations

from collections.abc import Sequence
from typing import Final

from msgspec.structs import replace

from advisor.order.bastedin import brings_in
from advisor.order.precedences import borne_near, too_tender
from advisor.order.rounding import PRESSINGS
from advisor.order.setups import Setups
from advisor.order.tasks import Task

BACKING: Final = "baste-backing"
ROUNDED: Final = 1.0
"""What no dial and no hand tells apart, °C: it is kept to without a word."""

Capped = tuple[tuple[str, frozenset[str]], ...]


def capped_near(tasks: Sequence[Task], setups: Setups) -> tuple[dict[str, Task], Capped]:
    """The tasks by id, each no hotter than what is in by then bears, and what that is, by step."""
    found, names = {}, []
    for k, task in enumerate(tasks):
        lids = _lids(task, tasks[:k], setups)
        most = min((lid for lid, _ in lids), default=None)
        found[task.id] = task if most is None else replace(task, at_most=most)
        worth = [who for lid, who in lids if (task.at_most or lid) - lid > ROUNDED]
        tender = frozenset().union(*worth)
        if tender:
            names.append((task.id, tender))
    return found, tuple(names)


def _lids(task: Task, before: Sequence[Task], setups: Setups) -> list[tuple[float, frozenset[str]]]:
    """What bears less than a pressing may come to and no less than it starts with, and who."""
    iron, place, most = task.step.iron, task.place, task.at_most
    if iron is None or place is None or most is None or task.op not in PRESSINGS:
        return []
    near = [b for b in before if brings_in(b) and b.op != BACKING]
    beside = [(borne_near(task, b, setups), too_tender(task, b, setups, most)) for b in near]
    found = [(lid, who) for lid, who in beside if who]
    start = iron.temperature_c
    return [(lid, who) for lid, who in found if lid is not None and start <= lid < most]

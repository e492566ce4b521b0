"""An order of work cut into sittings of a given length, with nothing left half-done.

Stopping is allowed between any two steps unless a couple of steps that belong in one sitting
stands on both sides (glue that sets, gathers that are pinned, a seam and its pressing). A
machine stays as it was left; the iron goes cold, so a wait for it to cool is spared at a stop
and one heating is added. The cut is found by dynamic programming over the places to stop.
"""

from __future__ import annotations

import math
from collections.abc import Iterable, Sequence
from itertools import pairwise

from msgspec import Struct

from advisor.order.costs import SECONDS
from advisor.order.plan import changes_of
from advisor.order.search import Setting
from advisor.order.steps import MachineState, Step


class Couple(Struct, frozen=True):
    """Two steps that must be done in one sitting, and why."""

    first: str
    second: str
    why: str = ""
    sources: tuple[str, ...] = ()


class Sitting(Struct, frozen=True):
    """What is done in one go: its steps, and minutes in all, on changes, and over the length."""

    steps: tuple[str, ...]
    minutes: float
    change_minutes: float
    over: float


# Less is better, in this order: time over the length, sittings, changes, unevenness.
Score = tuple[int, int, int, int]


def stops(order: Sequence[str], couples: Iterable[Couple]) -> tuple[int, ...]:
    """The places where work may stop: after so many steps; never nought, always the end.

    Raises ValueError for a couple that names an unknown step.
    """
    place = {name: k for k, name in enumerate(order)}
    closed: set[int] = set()
    for couple in couples:
        for name in (couple.first, couple.second):
            if name not in place:
                raise ValueError(f"a couple names {name!r}, which is not a step")
        first, last = sorted((place[couple.first], place[couple.second]))
        closed.update(range(first + 1, last + 1))
    return tuple(k for k in range(1, len(order) + 1) if k not in closed)


def split(
    order: Sequence[Step],
    length: float,
    couples: Iterable[Couple] = (),
    setting: Setting | None = None,
) -> tuple[Sitting, ...]:
    """The best cut of an order into sittings of at most `length` minutes where that can be.

    Best means: least time over the length, then fewest sittings, then least time on changes,
    then most even. A sitting that nothing may break and that is too long says so in `over`.
    Raises ValueError for a length that is not above zero, or an unknown step in a couple.
    """
    if not length > 0:
        raise ValueError(f"a sitting must be longer than nothing, not {length!r} minutes")
    ends = stops([step.id for step in order], couples)
    limit = math.floor(length * SECONDS + 1e-6)
    times = _times(order, setting or Setting())
    best: dict[int, tuple[Score, int]] = {0: ((0, 0, 0, 0), 0)}
    for end in ends:
        options = []
        for start, (score, _) in best.items():
            changing, whole = times[start][end - start - 1]
            added = (max(0, whole - limit), 1, changing, whole * whole)
            options.append((_plus(score, added), start))
        best[end] = min(options)
    cuts = [len(order)]
    while cuts[-1]:
        cuts.append(best[cuts[-1]][1])
    cuts.reverse()
    return tuple(_sitting(order, a, b, times[a][b - a - 1], limit) for a, b in pairwise(cuts))


def _times(order: Sequence[Step], setting: Setting) -> list[list[tuple[int, int]]]:
    """For each start, the seconds on changes and in all up to each later end."""
    setups: dict[str, MachineState] = {state.machine: state for state in setting.machines}
    times = []
    for start, first in enumerate(order):
        cold = start > 0
        iron = None if cold else setting.iron
        changes = changes_of(order[start:], setting.table, setups.values(), iron)
        price = {change.step: round(change.minutes * SECONDS) for change in changes}
        row, changing, whole = [], 0, 0
        for step in order[start:]:
            cost = price.get(step.id, 0)
            if cold and step.iron is not None:
                cost += round(setting.table.iron_hotter * SECONDS)
                cold = False
            changing += cost
            whole += cost + round(step.minutes * SECONDS)
            row.append((changing, whole))
        times.append(row)
        if first.machine is not None:
            # The machine where the maker sits stands last.
            setups.pop(first.machine.machine, None)
            setups[first.machine.machine] = first.machine
    return times


def _sitting(
    order: Sequence[Step], start: int, end: int, times: tuple[int, int], limit: int
) -> Sitting:
    changing, whole = times
    return Sitting(
        tuple(step.id for step in order[start:end]),
        whole / SECONDS,
        changing / SECONDS,
        max(0, whole - limit) / SECONDS,
    )


def _plus(a: Score, b: Score) -> Score:
    return (a[0] + b[0], a[1] + b[1], a[2] + b[2], a[3] + b[3])

"""What an order of work costs: the plan, its changes, and the price of any given order.

This is the plain reckoning, step by step, with no search in it; the search and its tests are
both held against it.
"""

from __future__ import annotations

from collections.abc import Iterable

from msgspec import Struct

from advisor.order.costs import SECONDS, ChangedPart, CostTable
from advisor.order.steps import IronState, MachineState, Step


class Change(Struct, frozen=True):
    """What is changed just before a step, part by part, and the price in minutes."""

    step: str
    what: tuple[str, ...]
    minutes: float


class OrderPlan(Struct, frozen=True):
    """An order of work with its price and how far it can be from the cheapest.

    `cost`, `bound` and `plain_cost` are minutes spent on changes: of this order, the least that
    any order can have, and of the customary order. `optimal` says that cost equals bound.
    """

    order: tuple[str, ...]
    cost: float
    changes: tuple[Change, ...]
    bound: float
    optimal: bool
    plain_cost: float

    @property
    def gap(self) -> float:
        """The minutes that a better order could at most save."""
        return self.cost - self.bound


def changes_of(
    order: Iterable[Step],
    table: CostTable,
    machines: Iterable[MachineState] = (),
    iron: IronState | None = None,
) -> tuple[Change, ...]:
    """The changes that an order needs, in the order's sequence.

    `machines` are set-ups found at the start, at most one for each machine, the last of them
    being where the maker sits; `iron` is the iron's setting at the start. What is not given is
    set up for the first time, without price.
    """
    setups = {state.machine: state for state in machines}
    seat = next(reversed(setups), None)
    found = []
    for step in order:
        parts: list[ChangedPart] = []
        if step.machine is not None:
            name = step.machine.machine
            if seat is not None and seat != name:
                parts.append(ChangedPart("machine", table.turn_seconds))
            if name in setups:
                parts.extend(table.machine_parts(setups[name], step.machine))
            seat = name
            setups[name] = step.machine
        if step.iron is not None:
            if iron is not None:
                parts.extend(table.iron_parts(iron, step.iron))
            iron = step.iron
        if parts:
            found.append(_change(step.id, parts))
    return tuple(found)


def seconds_of(changes: Iterable[Change]) -> int:
    """The whole price of some changes, in seconds."""
    return sum(round(change.minutes * SECONDS) for change in changes)


def _change(step: str, parts: list[ChangedPart]) -> Change:
    seconds = sum(part.seconds for part in parts)
    return Change(step, tuple(part.what for part in parts), seconds / SECONDS)

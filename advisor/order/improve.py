"""Mending an order: short stretches moved where that saves something, custom where it is free."""

from __future__ import annotations

from advisor.order.needs import NONE
from advisor.order.states import Space

LONGEST = 4
TRIALS = 20_000


def improved(space: Space, order: list[int], cost: int) -> tuple[list[int], int]:
    """The order after moving stretches until none helps or the trials are used up.

    `order` holds step indices and `cost` its price in seconds; so does the result.
    """
    trials = TRIALS // max(1, len(order) // 10)
    again = True
    while again and trials > 0:
        again = False
        for length in range(1, LONGEST + 1):
            for at in range(len(order) - length + 1):
                for found in _moved(space, order, at, length):
                    trials -= 1
                    price = _price(space, found, cost)
                    if price < cost:
                        order, cost, again = found, price, True
                        break
                if trials <= 0:
                    return order, cost
    return order, cost


def customary(space: Space, order: list[int], cost: int) -> list[int]:
    """The order with neighbours put into their customary sequence wherever the price allows.

    The search does free steps as early as it can; this lets them wait for their usual place.
    Every swap takes away one reversal of the plain order, so it comes to an end.
    """
    order = list(order)
    swapped = True
    while swapped:
        # A swap can make another one free at a distance, by way of what a machine holds.
        swapped = False
        for at in range(len(order) - 1):
            first, second = order[at], order[at + 1]
            if first > second and not space.before[second] >> first & 1:
                order[at], order[at + 1] = second, first
                if _apart(space, first, second) or _price(space, order, cost + 1) == cost:
                    swapped = True
                else:
                    order[at], order[at + 1] = first, second
    return order


def _apart(space: Space, first: int, second: int) -> bool:
    """Whether two steps need nothing of the same machine or iron, so that a swap costs nothing."""
    machine, iron = space.machine.needs.of, space.iron.needs.of
    return NONE in (machine[first], machine[second]) and NONE in (iron[first], iron[second])


def _moved(space: Space, order: list[int], at: int, length: int) -> list[list[int]]:
    """Every order in which the stretch stands elsewhere and no precedence is broken."""
    block, rest = order[at : at + length], order[:at] + order[at + length :]
    members = sum(1 << k for k in block)
    needed = 0
    for k in block:
        needed |= space.before[k]
    low, high = at, at
    while low > 0 and not needed >> rest[low - 1] & 1:
        low -= 1
    while high < len(rest) and not space.before[rest[high]] & members:
        high += 1
    return [rest[:to] + block + rest[to:] for to in range(low, high + 1) if to != at]


def _price(space: Space, order: list[int], limit: int) -> int:
    machine, iron, total = space.machine.start, space.iron.start, 0
    for k in order:
        c = space.machine.needs.of[k]
        if c != NONE:
            machine, price = space.machine.row(machine)[c]
            total += price
        c = space.iron.needs.of[k]
        if c != NONE:
            iron, price = space.iron.row(iron)[c]
            total += price
        if total >= limit:
            return limit
    return total

"""What is left open for as short a time as the set-ups allow: rows, slits, allowances to be graded.

The search does a step as soon as it is free of charge, so gathering rows are stitched long before
the seam that they are for, and pull out while the piece is handled; drawn up, they are lost. What
the custom of the trade has later waits as long: allowances that another seam shuts in meanwhile.
"""

from __future__ import annotations

from collections.abc import Callable, Iterable
from typing import Final

from msgspec.structs import replace

from advisor.order.graph import Graph
from advisor.order.plan import OrderPlan, changes_of
from advisor.order.search import Setting
from advisor.order.sittings import Couple

LOOSE: Final = ("draw-up", "gather", "lay-pleats")
"""Work that holds nothing until the seam that follows is sewn; what is nearest to that, first."""
PROMPT: Final = frozenset({"grade"})
"""Work that is done as soon as its seam is pressed, while the shears still come to it."""


def closed_up(
    plan: OrderPlan,
    graph: Graph,
    loose: Iterable[Couple],
    setting: Setting,
    prompt: Iterable[str] = (),
) -> OrderPlan:
    """The plan with what lies loose moved to what it waits for, wherever that costs nothing.

    Args:
        plan: the order found.
        graph: its steps and what is forced among them.
        loose: what lies loose, each with the step that it waits for.
        prompt: the steps that are moved up to what they wait for.
        setting: what an order is priced with.
    """
    steps = {step.id: step for step in graph.steps}
    order = list(plan.order)

    def seconds(names: list[str]) -> int:
        return setting.seconds(steps[n] for n in names)

    for couple in loose:
        order = _later(order, couple.first, graph, seconds)
    for step in prompt:
        order = _sooner(order, step, graph, seconds)
    work = [steps[name] for name in order]
    changes = changes_of(work, setting.table, setting.machines, setting.iron)
    return replace(plan, order=tuple(order), changes=changes)


def _later(
    order: list[str], step: str, graph: Graph, seconds: Callable[[list[str]], int]
) -> list[str]:
    """The order with one step as late as its price and what waits for it allow."""
    at, waiting = order.index(step), set(graph.forced_after(step))
    last = next((k for k in range(at + 1, len(order)) if order[k] in waiting), at + 1) - 1
    rest, price = order[:at] + order[at + 1 :], seconds(order)
    for to in range(last, at, -1):
        moved = [*rest[:to], step, *rest[to:]]
        if seconds(moved) <= price:
            return moved
    return order


def _sooner(
    order: list[str], step: str, graph: Graph, seconds: Callable[[list[str]], int]
) -> list[str]:
    """The order with one step as soon after what it waits for as its price allows."""
    at, waited = order.index(step), set(graph.forced_before(step))
    first = max((k + 1 for k in range(at) if order[k] in waited), default=0)
    rest, price = order[:at] + order[at + 1 :], seconds(order)
    for to in range(first, at):
        moved = [*rest[:to], step, *rest[to:]]
        if seconds(moved) <= price:
            return moved
    return order

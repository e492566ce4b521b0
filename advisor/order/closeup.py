"""What is left open for as short a time as the set-ups allow: rows that wait to be drawn up.

The search does a step as soon as it is free of charge, so gathering rows are stitched long before
the seam that they are drawn up for, and pull out or are lost while the piece is handled.
"""

from __future__ import annotations

from collections.abc import Callable, Iterable
from dataclasses import replace
from typing import Final

from advisor.order.graph import Graph
from advisor.order.plan import OrderPlan, changes_of
from advisor.order.search import Setting
from advisor.order.sittings import Couple

LOOSE: Final = frozenset({"gather", "lay-pleats"})
"""Pieces of work that hold nothing until the seam that follows is sewn."""


def closed_up(
    plan: OrderPlan, graph: Graph, loose: Iterable[Couple], setting: Setting
) -> OrderPlan:
    """The plan with what lies loose moved to what it waits for, wherever that costs nothing.

    Args:
        plan: the order found.
        graph: its steps and what is forced among them.
        loose: what lies loose, each with the step that it waits for.
        setting: what an order is priced with.
    """
    steps = {step.id: step for step in graph.steps}
    order = list(plan.order)
    for couple in loose:
        order = _later(
            order, couple.first, graph, lambda names: setting.seconds(steps[n] for n in names)
        )
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

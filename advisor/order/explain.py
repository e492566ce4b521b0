"""Why a step stands where it stands, and what it would cost to have it elsewhere.

A pin is taken as two more precedences: after one step, before another. So the rest of the
order is found anew around it, and where that cannot be, the smallest cycle that the pin closes
names the precedences that forbid it.
"""

from __future__ import annotations

from msgspec import Struct

from advisor.order.graph import CycleError, Graph, build
from advisor.order.plan import OrderPlan
from advisor.order.search import Effort, Setting, plan_graph
from advisor.order.steps import Precedence


class Pin(Struct, frozen=True):
    """Where a maker wants a step: after one step, before another, or both."""

    step: str
    after: str | None = None
    before: str | None = None
    why: str = "pinned by the maker"

    def precedences(self) -> tuple[Precedence, ...]:
        """The pin as precedences, to be added to those of the garment."""
        found = []
        if self.after is not None:
            found.append(Precedence(self.after, self.step, self.why))
        if self.before is not None:
            found.append(Precedence(self.step, self.before, self.why))
        return tuple(found)


class Moved(Struct, frozen=True):
    """What a pin comes to: a new plan and its extra minutes, or what forbids it.

    `extra` is counted against the plan that was asked about, and is never below zero when that
    plan is optimal; `extra_least` is the least it can be, which differs only where the new plan
    is not proved optimal. Without a plan both are None and `forbidden_by` is the shortest chain
    of precedences that stands against the pin.
    """

    pin: Pin
    plan: OrderPlan | None
    extra: float | None
    extra_least: float | None
    forbidden_by: tuple[Precedence, ...]


def moved(
    graph: Graph,
    current: OrderPlan,
    pin: Pin,
    setting: Setting | None = None,
    effort: Effort | None = None,
) -> Moved:
    """The cheapest order with the pin, against the current plan; or what forbids the pin.

    Raises ValueError for a pin that names an unknown step.
    """
    added = pin.precedences()
    try:
        tied = build(graph.steps, (*graph.precedences, *added))
    except CycleError as error:
        against = tuple(item for item in error.cycle if item not in added)
        return Moved(pin, None, None, None, against)
    found = plan_graph(tied, setting or Setting(), effort or Effort())
    return Moved(pin, found, found.cost - current.cost, found.bound - current.cost, ())

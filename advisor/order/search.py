"""The cheapest order of work under the precedences, proved, or with a proven gap.

First a beam search finds a good order, and `improve` mends it. Then A* (Hart, Nilsson and
Raphael's best-first search) expands states in the order of price so far plus `Space.rest`, a
lower bound; when the lowest sum left is no less than the best order known, that order is
proved optimal. When the effort runs out first, that lowest sum is the bound. Effort is counted
in states expanded, never in time, so that two runs agree; ties fall to the customary sequence.
"""

from __future__ import annotations

import heapq
from collections.abc import Iterable, Sequence
from functools import lru_cache

from msgspec import Struct, field

from advisor.order.costs import SECONDS, CostTable
from advisor.order.families import iron_family, machine_family
from advisor.order.graph import Graph, build
from advisor.order.improve import customary, improved
from advisor.order.plan import OrderPlan, changes_of, seconds_of
from advisor.order.states import Move, Space, State
from advisor.order.steps import IronState, MachineState, Precedence, Step

KEPT = 64
"""Orders that are kept: a page asks for the same one after most changes."""


class Effort(Struct, frozen=True):
    """How hard to search: states expanded, states kept for bounds, and the beam's width."""

    states: int = 25_000
    bounds: int = 100_000
    beam: int = 24


class Setting(Struct, frozen=True):
    """What an order is priced with: the table, and how machines and iron stand at the start."""

    table: CostTable = field(default_factory=CostTable)
    machines: tuple[MachineState, ...] = ()
    iron: IronState | None = None

    def seconds(self, order: Iterable[Step]) -> int:
        """The price of an order in seconds."""
        return seconds_of(changes_of(order, self.table, self.machines, self.iron))


def plan(
    steps: Iterable[Step],
    precedences: Iterable[Precedence],
    setting: Setting | None = None,
    effort: Effort | None = None,
) -> OrderPlan:
    """The cheapest order found, with its changes and bound; never dearer than the plain order.

    All precedences are kept, whatever their strength (see `graph.settle`). Raises CycleError
    when no order exists, and ValueError for repeated or unknown steps.
    """
    return plan_graph(build(steps, precedences), setting or Setting(), effort or Effort())


def plan_graph(graph: Graph, setting: Setting, effort: Effort) -> OrderPlan:
    """As `plan`, for a graph that is already built; the last ones are kept.

    Only what is searched counts for that: a length or a wording changes no order.
    """
    steps = tuple(Step(one.id, machine=one.machine, iron=one.iron) for one in graph.steps)
    return _searched(steps, graph.before, graph.after, setting, effort)


@lru_cache(maxsize=KEPT)
def _searched(
    steps: tuple[Step, ...],
    before: tuple[int, ...],
    after: tuple[int, ...],
    setting: Setting,
    effort: Effort,
) -> OrderPlan:
    """The plan of steps of which these are forced before and after each."""
    graph = Graph(steps, (), {step.id: k for k, step in enumerate(steps)}, before, after)
    table = setting.table
    machine = machine_family(graph, table, setting.machines, effort.bounds)
    iron = iron_family(graph, table, setting.iron, effort.bounds)
    space = Space(graph, machine, iron)
    plain = setting.seconds(graph.steps)
    order, cost = _first(graph, setting, space, effort, plain)
    better, bound = best_first(space, cost, effort.states)
    if better is not None:
        order, cost = better, bound
    work = [graph.steps[k] for k in customary(space, order, cost)]
    changes = changes_of(work, table, setting.machines, setting.iron)
    return OrderPlan(
        tuple(step.id for step in work),
        seconds_of(changes) / SECONDS,
        changes,
        bound / SECONDS,
        bound == cost,
        plain / SECONDS,
    )


def _first(
    graph: Graph, setting: Setting, space: Space, effort: Effort, plain: int
) -> tuple[list[int], int]:
    """A good order to begin with: the plain one, or the beam's, mended."""
    order, cost = list(range(len(graph.steps))), plain
    floor = space.rest(space.start())
    if cost > floor:
        found = space.sequence(space.start(), _beam(space, effort.beam))
        price = setting.seconds(graph.steps[k] for k in found)
        if price < cost:
            order, cost = found, price
    if cost > floor:
        order, cost = improved(space, order, cost)
    return order, cost


def _beam(space: Space, width: int) -> list[Move]:
    """The moves of a complete path, keeping only the most promising states at each length."""
    layer: list[tuple[int, int, State, tuple[Move, ...]]] = [(0, 0, space.start(), ())]
    best: tuple[int, tuple[Move, ...]] | None = None
    while layer:
        reached: dict[State, tuple[int, tuple[Move, ...]]] = {}
        for _, spent, state, path in layer:
            if state.done == space.everything:
                if best is None or spent < best[0]:
                    best = (spent, path)
                continue
            for move in space.moves(state):
                known = reached.get(move.to)
                if known is None or spent + move.price < known[0]:
                    reached[move.to] = (spent + move.price, (*path, move))
        ranked = [(cost + space.rest(to), cost, to, path) for to, (cost, path) in reached.items()]
        ranked.sort(key=lambda item: (item[0], -item[2].done.bit_count(), item[2]))
        layer = [item for item in ranked[:width] if best is None or item[0] < best[0]]
    return list(best[1]) if best else []


def best_first(space: Space, known: int, budget: int) -> tuple[list[int] | None, int]:
    """A cheaper order than the known price, if there is one, and the proven lower bound."""
    start = space.start()
    spent = {start: 0}
    came: dict[State, tuple[State, Move]] = {}
    queue = [(space.rest(start), 0, 0, start)]
    pushed = bound = 0
    while queue:
        floor, _, _, state = heapq.heappop(queue)
        # A bound once proved stays proved, though a later sum may be lower.
        bound = max(bound, floor)
        if floor >= known:
            return None, known
        if state.done == space.everything:
            return space.sequence(start, _trace(came, state)), floor
        if budget <= 0:
            return None, bound
        at = spent[state]
        if floor > at + space.rest(state):
            continue
        budget -= 1
        for move in space.moves(state):
            cost = at + move.price
            if cost < spent.get(move.to, cost + 1):
                estimate = cost + space.rest(move.to)
                if estimate < known:
                    spent[move.to] = cost
                    came[move.to] = (state, move)
                    pushed += 1
                    heapq.heappush(queue, (estimate, -move.to.done.bit_count(), pushed, move.to))
    return None, known


def _trace(came: dict[State, tuple[State, Move]], state: State) -> list[Move]:
    moves: list[Move] = []
    while state in came:
        state, move = came[state]
        moves.append(move)
    return moves[::-1]


def price_of(order: Sequence[str], steps: Iterable[Step], setting: Setting | None = None) -> float:
    """The minutes that an order, given by ids, spends on changes."""
    byid = {step.id: step for step in steps}
    return (setting or Setting()).seconds(byid[name] for name in order) / SECONDS

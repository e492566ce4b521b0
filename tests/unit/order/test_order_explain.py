"""Why a step stands where it stands, and what it costs to move it."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

import pytest

from advisor.order.explain import Pin, moved
from advisor.order.graph import build
from advisor.order.search import Effort, Setting, plan_graph
from advisor.order.steps import MachineState, Precedence, Step
from tests.unit.order.order_cases import garment

BLACK = MachineState(
    "household", "black", "black", "universal", 80, "standard", "standard", "lockstitch", "firm"
)
ZIP = replace(BLACK, foot="zip")
STEPS = [
    Step("dart", machine=BLACK, rank=1),
    Step("press", rank=2),
    Step("zip", machine=ZIP, rank=3),
    Step("side", machine=BLACK, rank=4),
    Step("hem", machine=BLACK, rank=5),
]
TIES = [
    Precedence("dart", "press", "press each seam before another crosses it"),
    Precedence("press", "side", "press each seam before another crosses it"),
    Precedence("dart", "side", "darts before the seams that cross them"),
    Precedence("side", "hem", "hem last"),
]


def test_a_step_s_reasons_are_those_that_do_not_follow_from_others() -> None:
    """The side seam waits for the pressing; that it waits for the dart goes without saying."""
    graph = build(STEPS, TIES)
    assert [TIES[1]] == [tie for tie in graph.reduced() if tie.after == "side"]
    assert [TIES[3]] == [tie for tie in graph.reduced() if tie.before == "side"]
    assert ("dart", "press") == graph.forced_before("side")
    assert ("hem",) == graph.forced_after("side")


def test_moving_a_step_costs_what_the_best_order_around_it_costs() -> None:
    """A zip between dart and side seam needs its foot put on and taken off once more."""
    graph = build(STEPS, TIES)
    current = plan_graph(graph, Setting(), Effort())
    assert 1.0 == current.cost
    found = moved(graph, current, Pin("zip", after="dart", before="side"))
    assert found.plan is not None
    assert (1.0, 1.0, ()) == (found.extra, found.extra_least, found.forbidden_by)
    assert found.plan.order.index("dart") < found.plan.order.index("zip")
    assert found.plan.order.index("zip") < found.plan.order.index("side")


def test_a_pin_that_cannot_be_names_what_forbids_it() -> None:
    """A hem before the pressing is against two precedences, and both are told."""
    graph = build(STEPS, TIES)
    found = moved(graph, plan_graph(graph, Setting(), Effort()), Pin("hem", before="press"))
    assert found.plan is None
    assert found.extra is None
    assert {TIES[1], TIES[3]} == set(found.forbidden_by)


def pin_at(order: Sequence[str], step: str, position: int) -> Pin:
    """The pin for a place in an order, counted from 0: between the steps that then stand there."""
    rest = [None, *(name for name in order if name != step), None]
    return Pin(step, rest[position], rest[position + 1])


@pytest.mark.parametrize("seed", range(4))
def test_every_place_is_either_had_or_forbidden(seed: int) -> None:
    """A pinned step stands where it is pinned, never for less than the optimum, or is told why."""
    steps, precedences = garment(seed, 14)
    graph = build(steps, precedences)
    current = plan_graph(graph, Setting(), Effort())
    assert current.optimal
    step = current.order[seed + 3]
    outcomes = set()
    for position in range(len(steps)):
        pin = pin_at(current.order, step, position)
        found = moved(graph, current, pin)
        outcomes.add(found.plan is None)
        if found.plan is None:
            assert found.forbidden_by
            assert set(found.forbidden_by) <= set(precedences)
        else:
            assert found.extra is not None
            assert found.extra >= 0
            place = {name: k for k, name in enumerate(found.plan.order)}
            assert all(place[p.before] < place[p.after] for p in pin.precedences())
    assert False in outcomes


def test_a_step_left_where_it_is_costs_nothing() -> None:
    """Pinning the optimum's own place changes no price."""
    steps, precedences = garment(2, 14)
    graph = build(steps, precedences)
    current = plan_graph(graph, Setting(), Effort())
    for place, step in enumerate(current.order):
        assert 0.0 == moved(graph, current, pin_at(current.order, step, place)).extra

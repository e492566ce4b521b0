"""The same optimum as trying every order, and as OR-Tools CP-SAT."""

from __future__ import annotations

import pytest

from advisor.order.costs import CostTable
from advisor.order.families import iron_family, machine_family
from advisor.order.graph import build
from advisor.order.search import Effort, Setting, best_first, plan
from advisor.order.states import Space
from tests.unit.order.order_cases import by_cp_sat, garment, table, tried_all

# Small garments are many, so that every odd shape turns up; large ones are few, for CP-SAT's sake.
SIZES = [*[9] * 40, *[12] * 50, *[16] * 50, *[20] * 60]
assert len(SIZES) == 200


@pytest.mark.parametrize("seed", range(40))
def test_no_order_of_a_few_steps_is_cheaper(seed: int) -> None:
    """Of all orders of seven steps, none costs less, whatever the prices and the start."""
    steps, precedences = garment(1000 + seed, 7, ties=0.15, machines=4)
    start, _ = garment(2000 + seed, 7, machines=4)
    found = {s.machine.machine: s.machine for s in start if s.machine}
    iron = next((s.iron for s in start if s.iron), None)
    setting = Setting(table(seed), tuple(found.values()) if seed % 2 else (), iron)
    best = plan(steps, precedences, setting)
    assert best.optimal
    assert tried_all(steps, precedences, setting) == round(best.cost * 60)


@pytest.mark.parametrize("batch", range(20))
def test_the_same_optimum_as_cp_sat(batch: int) -> None:
    """Two hundred made-up garments of up to twenty steps, the estimates or a maker's own prices."""
    for seed in range(batch, len(SIZES), 20):
        ties = (0.06, 0.15, 0.3)[seed % 3]
        steps, precedences = garment(seed, SIZES[seed], ties=ties, machines=7, irons=4)
        prices = table(seed) if seed % 2 else CostTable()
        best = plan(steps, precedences, Setting(prices))
        least, proved = by_cp_sat(steps, precedences, prices)
        assert proved, seed
        assert best.optimal, seed
        assert least == round(best.cost * 60), seed


@pytest.mark.parametrize("seed", range(10))
def test_the_search_finds_the_optimum_without_a_good_start(
    seed: int, monkeypatch: pytest.MonkeyPatch
) -> None:
    """With bounds and beam as poor as can be, best-first search alone comes to the same price."""
    steps, precedences = garment(seed, 16, ties=0.1, machines=7, irons=4)
    good = plan(steps, precedences)
    monkeypatch.setattr("advisor.order.search.improved", unmended)
    poor = plan(steps, precedences, effort=Effort(bounds=0, beam=1))
    assert poor.optimal
    assert good.cost == poor.cost
    for states in (0, 1, 3, 10, 30):
        short = plan(steps, precedences, effort=Effort(states=states, beam=1))
        assert short.bound <= good.cost <= short.cost


def unmended(_space: Space, order: list[int], cost: int) -> tuple[list[int], int]:
    """No mending at all."""
    return order, cost


@pytest.mark.parametrize("seed", range(10))
def test_a_search_cut_short_anywhere_proves_no_more_than_the_optimum(seed: int) -> None:
    """Against a dear known order, the bound after any number of states is at most the optimum."""
    steps, precedences = garment(seed, 20, ties=0.1, machines=7, irons=4)
    least = round(plan(steps, precedences).cost * 60)
    graph = build(steps, precedences)
    bounds = []
    for states in (0, 1, 2, 5, 10, 1000):
        space = Space(
            graph,
            machine_family(graph, CostTable(), (), 10_000),
            iron_family(graph, CostTable(), None, 10_000),
        )
        order, bound = best_first(space, least + 600, states)
        assert order is None or bound == least
        bounds.append(bound)
    assert sorted(bounds) == bounds
    assert least == bounds[-1]

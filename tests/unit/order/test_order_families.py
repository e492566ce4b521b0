"""One family by itself: its moves, its free steps, and the exact price of its rest."""

from __future__ import annotations

import itertools

import pytest

from advisor.order.costs import CostTable
from advisor.order.families import Family, iron_family, machine_family
from advisor.order.graph import build
from advisor.order.needs import MACHINE_PARTS, iron_needs, machine_needs
from advisor.order.plan import changes_of, seconds_of
from advisor.order.states import Space
from advisor.order.steps import IronState, MachineState, Step
from tests.unit.order.order_cases import garment, keeps, table

DRY = IronState(150, "dry", "board")
PILE = IronState(150, "dry", "pile board")
HOT = IronState(200, "dry", "board")


def test_states_that_cost_nothing_to_swap_are_one_class() -> None:
    """With boards for nothing, two boards are no two states."""
    graph = build([Step("a", iron=DRY), Step("b", iron=PILE), Step("c", iron=HOT)], [])
    needs = iron_needs(graph, CostTable(iron_surface=0.0), None)
    assert needs.of[0] == needs.of[1] != needs.of[2]


def test_a_step_is_free_only_where_it_changes_nothing() -> None:
    """The first heating has no price, yet the step is not free: it settles the iron."""
    graph = build([Step("a", iron=DRY), Step("b", iron=HOT), Step("c")], [])
    iron = Family(iron_needs(graph, CostTable(), None), graph.before, 100)
    assert ("c",) == graph.ids(iron.free(iron.start))
    after, price = iron.row(iron.start)[iron.needs.of[0]]
    assert 0 == price
    assert ("a", "c") == graph.ids(iron.free(after))


@pytest.mark.parametrize("seed", range(12))
def test_the_rest_of_one_family_is_exact(seed: int) -> None:
    """It is the least price over all orders when the other family's prices are left out."""
    steps, precedences = garment(seed, 7, ties=0.2, machines=4)
    graph, prices = build(steps, precedences), table(seed)
    machine = machine_family(graph, prices, (), 10_000)
    iron = iron_family(graph, prices, None, 10_000)
    sewn, ironed = [], []
    for order in itertools.permutations(steps):
        if keeps([step.id for step in order], precedences):
            sewn.append(_only(order, prices, iron=False))
            ironed.append(_only(order, prices, iron=True))
    assert min(sewn) == machine.rest(0, machine.start)
    assert min(ironed) == iron.rest(0, iron.start)


@pytest.mark.parametrize("seed", range(12))
def test_without_room_to_remember_the_rest_is_still_a_lower_bound(seed: int) -> None:
    """A budget of nothing gives a bound no higher than the exact one, all along a path."""
    steps, precedences = garment(seed, 20, ties=0.1, machines=8, irons=4)
    graph, prices = build(steps, precedences), table(seed)
    exact, rough = (
        Space(
            graph,
            machine_family(graph, prices, (), room),
            iron_family(graph, prices, None, room),
        )
        for room in (100_000, 0)
    )
    at, other = exact.start(), rough.start()
    while at.done != exact.everything:
        assert 0 <= rough.rest(other) <= exact.rest(at)
        at, other = next(exact.moves(at)).to, next(rough.moves(other)).to
    assert 0 == exact.rest(at) == rough.rest(other)


def _only(order: tuple[Step, ...], prices: CostTable, *, iron: bool) -> int:
    kept = [
        Step(step.id, iron=step.iron) if iron else Step(step.id, machine=step.machine)
        for step in order
    ]
    return seconds_of(changes_of(kept, prices))


def test_turning_to_two_machines_is_one_turn() -> None:
    """Where the maker sits first is free, also for the bound that remembers nothing."""
    seams = [
        Step(name, machine=MachineState(name, "a", "a", "sharp", 80, "b", "c", "d", "e"))
        for name in ("household", "overlocker")
    ]
    graph = build(seams, [])
    for room in (0, 100):
        family = machine_family(graph, CostTable(), (), room)
        assert 30 == family.rest(0, family.start)


@pytest.mark.parametrize("seed", range(8))
def test_the_parts_of_a_family_add_up_to_no_more_than_the_whole(seed: int) -> None:
    """Threads, feet and the rest apart bound the whole from below, better than single entries."""
    steps, precedences = garment(seed, 24, ties=0.3, machines=8, irons=4)
    graph = build(steps, precedences)
    whole = machine_family(graph, CostTable(), (), 100_000)
    apart = [
        Family(machine_needs(graph, CostTable(), (), only), graph.before, 100_000)
        for only in MACHINE_PARTS
    ]
    total = sum(part.rest(0, part.start) for part in apart)
    bare = Family(machine_needs(graph, CostTable(), ()), graph.before, 0)
    assert bare.rest(0, bare.start) < total <= whole.rest(0, whole.start)

"""Laws of the order of work, on garments that Hypothesis makes up."""

from __future__ import annotations

from typing import Any

from hypothesis import given
from hypothesis import strategies as st

from advisor.order.costs import CostTable
from advisor.order.graph import build
from advisor.order.search import Effort, Setting, plan, price_of
from advisor.order.steps import IronState, MachineState, Precedence, Step

machines = st.builds(
    MachineState,
    st.sampled_from(["household", "overlocker"]),
    st.sampled_from(["black", "red"]),
    st.sampled_from(["black", "red"]),
    st.sampled_from(["sharp", "ballpoint"]),
    st.sampled_from([70, 90]),
    st.sampled_from(["standard", "zip"]),
    st.just("standard"),
    st.sampled_from(["lockstitch", "zigzag"]),
    st.sampled_from(["light", "firm"]),
)
irons = st.builds(
    IronState,
    st.sampled_from([110, 150, 200]),
    st.sampled_from(["dry", "steam"]),
    st.sampled_from(["board", "pile board"]),
)
prices = st.sampled_from([0.0, 0.25, 1.0, 2.0, 6.0])
tables = st.builds(CostTable, *[prices] * 13)
settings_ = st.builds(Setting, tables, st.just(()), st.none() | irons)


@st.composite
def garments(draw: st.DrawFn, least: int = 0) -> tuple[list[Step], list[Precedence]]:
    """Up to twelve steps with precedences that do not chase each other."""
    count = draw(st.integers(least, 12))
    steps = [
        Step(
            f"s{k:02}",
            machine=draw(st.none() | machines),
            iron=draw(st.none() | irons),
            rank=draw(st.integers(0, 2)),
        )
        for k in range(count)
    ]
    names = draw(st.permutations([step.id for step in steps]))
    pairs = (
        st.tuples(st.integers(0, count - 1), st.integers(0, count - 1)) if count else st.nothing()
    )
    drawn = draw(st.lists(pairs, max_size=14)) if count else []
    ties = [Precedence(names[min(p)], names[max(p)]) for p in drawn if p[0] != p[1]]
    return steps, ties


Garment = tuple[list[Step], list[Precedence]]


@given(garments(), settings_)
def test_the_order_is_a_permutation_that_keeps_every_precedence(
    garment: Garment, setting: Setting
) -> None:
    """Every step once, and each after what it waits for."""
    steps, ties = garment
    order = plan(steps, ties, setting).order
    assert sorted(step.id for step in steps) == sorted(order)
    assert all(order.index(tie.before) < order.index(tie.after) for tie in ties)


@given(garments(), settings_, st.sampled_from([Effort(), Effort(states=2, bounds=3, beam=1)]))
def test_bound_cost_and_plain_cost_stand_in_that_order(
    garment: Garment, setting: Setting, effort: Effort
) -> None:
    """The bound never exceeds the cost, nor the cost that of the plain order, however short."""
    found = plan(*garment, setting, effort)
    assert 0 <= found.bound <= found.cost <= found.plain_cost
    assert found.optimal == (found.bound == found.cost)
    assert found.cost == price_of(found.order, garment[0], setting)


@given(garments(least=2), settings_, st.data())
def test_adding_a_precedence_never_lowers_the_cost(
    garment: Garment, setting: Setting, data: st.DataObject
) -> None:
    """One more tie that the order can bear makes it cost as much or more."""
    steps, ties = garment
    plain = [step.id for step in build(steps, ties).steps]
    a, b = sorted(data.draw(st.lists(st.sampled_from(range(len(plain))), min_size=2, max_size=2)))
    more = [*ties, Precedence(plain[a], plain[b])] if a != b else ties
    loose, tied = plan(steps, ties, setting), plan(steps, more, setting)
    assert loose.optimal
    assert tied.optimal
    assert loose.cost <= tied.cost


@given(garments(), settings_, st.randoms(use_true_random=False))
def test_the_order_of_the_file_never_matters(garment: Garment, setting: Setting, rng: Any) -> None:
    """Steps and precedences shuffled and repeated give the same plan to the letter."""
    steps, ties = garment
    mixed, tangled = list(steps), [*ties, *ties[:2]]
    rng.shuffle(mixed)
    rng.shuffle(tangled)
    assert plan(steps, ties, setting) == plan(mixed, tangled, setting)


@given(garments(), settings_)
def test_the_plain_order_stands_where_none_is_cheaper(garment: Garment, setting: Setting) -> None:
    """Custom is left only to save something."""
    found = plan(*garment, setting)
    if found.cost == found.plain_cost:
        assert tuple(step.id for step in build(*garment).steps) == found.order


@given(tables, machines, machines, machines)
def test_no_detour_is_cheaper_on_a_machine(
    table: CostTable, a: MachineState, b: MachineState, c: MachineState
) -> None:
    """The triangle rule, on which the search rests."""
    if a.machine == b.machine == c.machine:
        direct = table.machine_seconds(a, c)
        assert direct <= table.machine_seconds(a, b) + table.machine_seconds(b, c)
        assert 0 == table.machine_seconds(a, a)


@given(tables, irons, irons, irons)
def test_no_detour_is_cheaper_for_the_iron(
    table: CostTable, a: IronState, b: IronState, c: IronState
) -> None:
    """The triangle rule, on which the search rests."""
    assert table.iron_seconds(a, c) <= table.iron_seconds(a, b) + table.iron_seconds(b, c)
    assert 0 == table.iron_seconds(a, a)


@given(garments(), settings_)
def test_no_two_neighbours_are_against_custom_for_nothing(
    garment: Garment, setting: Setting
) -> None:
    """Swapping two neighbours back into custom breaks a precedence or costs something."""
    steps, ties = garment
    graph, found = build(steps, ties), plan(steps, ties, setting)
    order = found.order
    for at in range(len(order) - 1):
        first, second = order[at], order[at + 1]
        if graph.index[first] > graph.index[second] and first not in graph.forced_before(second):
            swapped = [*order[:at], second, first, *order[at + 2 :]]
            assert price_of(swapped, steps, setting) > found.cost

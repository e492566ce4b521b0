"""The cheapest order on small pieces of garments whose answer can be seen."""

from __future__ import annotations

import dataclasses

import pytest
from msgspec.structs import replace

from advisor.order.costs import CostTable
from advisor.order.graph import CycleError, build
from advisor.order.plan import Change
from advisor.order.search import Effort, Setting, plan, price_of
from advisor.order.steps import IronState, MachineState, Precedence, Step
from tests.unit.order.order_cases import garment, keeps

BLACK = MachineState(
    "household", "black", "black", "universal", 80, "standard", "standard", "lockstitch", "firm"
)
RED = dataclasses.replace(BLACK, thread_above="red")
OVERLOCK = dataclasses.replace(BLACK, machine="overlocker", stitch="overlock")
COOL = IronState(110, "dry", "board")
HOT = IronState(200, "dry", "board")


def test_like_goes_with_like() -> None:
    """Black, red, black, red in the customary order becomes one change of thread."""
    steps = [Step(f"s{k}", machine=BLACK if k % 2 else RED, rank=k) for k in range(6)]
    found = plan(steps, [])
    assert (2.0, 10.0, True) == (found.cost, found.plain_cost, found.optimal)
    assert 1 == len(found.changes)
    assert ("thread",) == found.changes[0].what


def test_the_iron_goes_from_cool_to_hot() -> None:
    """Heating is cheaper than waiting for it to cool, though hot comes first by custom."""
    steps = [Step("linen", iron=HOT, rank=0), Step("lace", iron=COOL, rank=1)]
    assert ("lace", "linen") == plan(steps, []).order


def test_a_precedence_stands_whatever_it_costs() -> None:
    """Linen that must be pressed before the lace is in costs the wait for the iron."""
    steps = [Step("linen", iron=HOT), Step("lace", iron=COOL)]
    found = plan(steps, [Precedence("linen", "lace", "the lace is not in yet")])
    assert (("linen", "lace"), 5.0) == (found.order, found.cost)


def test_ironing_between_two_seams_leaves_the_machine_threaded() -> None:
    """Sew, press, sew in one thread is no change at all."""
    steps = [Step("a", machine=BLACK), Step("b", iron=HOT), Step("c", machine=BLACK)]
    found = plan(steps, [Precedence("a", "b"), Precedence("b", "c")])
    assert (("a", "b", "c"), 0.0, ()) == (found.order, found.cost, found.changes)


def test_the_overlocker_leaves_the_household_machine_threaded() -> None:
    """Turning to another machine and back is two turns, not a re-threading."""
    steps = [Step("a", machine=BLACK), Step("b", machine=OVERLOCK), Step("c", machine=BLACK)]
    found = plan(steps, [Precedence("a", "b"), Precedence("b", "c")])
    assert (Change("b", ("machine",), 0.5), Change("c", ("machine",), 0.5)) == found.changes


def test_what_is_found_set_up_is_used_first() -> None:
    """A machine that stands threaded in red begins with the red seams."""
    steps = [Step("black", machine=BLACK), Step("red", machine=RED)]
    assert ("black", "red") == plan(steps, []).order
    assert ("red", "black") == plan(steps, [], Setting(machines=(RED,))).order


def test_a_hot_iron_is_a_start_too() -> None:
    """With the iron hot already, cool work first costs the wait and hot work later the heat."""
    steps = [Step("linen", iron=HOT), Step("lace", iron=COOL)]
    found = plan(steps, [], Setting(iron=HOT))
    assert (("linen", "lace"), 5.0) == (found.order, found.cost)


def test_equal_prices_fall_to_custom() -> None:
    """Where nothing is saved, the customary order stands."""
    steps = [Step("a", rank=3), Step("b", rank=1), Step("c", rank=2)]
    assert ("b", "c", "a") == plan(steps, []).order


def test_free_steps_wait_for_their_customary_place() -> None:
    """Hand work could be done at any time; it stays near where custom has it."""
    steps = [
        Step("a", machine=BLACK, rank=1),
        Step("b", machine=RED, rank=2),
        Step("c", machine=BLACK, rank=3),
        Step("sew on buttons", rank=4),
    ]
    assert ("b", "a", "c", "sew on buttons") == plan(steps, [Precedence("b", "c")]).order


def test_no_steps_is_a_plan() -> None:
    """An empty garment has an empty order that costs nothing."""
    found = plan([], [])
    assert ((), 0.0, 0.0, True) == (found.order, found.cost, found.bound, found.optimal)


def test_a_cycle_is_told_and_not_searched() -> None:
    """An order that cannot be is an error with the cycle in it."""
    with pytest.raises(CycleError):
        plan([Step("a"), Step("b")], [Precedence("a", "b"), Precedence("b", "a")])


def test_the_changes_add_up_to_the_cost() -> None:
    """The plan's price is that of its order, reckoned step by step."""
    steps, precedences = garment(3, 30)
    found = plan(steps, precedences)
    assert found.cost == sum(change.minutes for change in found.changes)
    assert found.cost == price_of(found.order, steps)


@pytest.mark.parametrize("seed", range(4))
def test_eighty_steps_are_ordered_to_the_optimum(seed: int) -> None:
    """A garment of eighty steps that hang together is proved, not only improved."""
    steps, precedences = garment(seed, 80, ties=0.35, machines=8, irons=4)
    found = plan(steps, precedences)
    assert found.optimal
    assert keeps(found.order, precedences)
    assert found.cost < found.plain_cost


@pytest.mark.parametrize("seed", range(3))
def test_a_small_effort_still_has_a_true_bound(seed: int) -> None:
    """Cut short, the search tells a price and a bound that hold the optimum between them."""
    steps, precedences = garment(seed, 30, ties=0.08, machines=10, irons=4)
    best = plan(steps, precedences)
    rough = plan(steps, precedences, effort=Effort(states=0, bounds=5, beam=1))
    assert best.optimal
    assert rough.bound <= best.cost <= rough.cost <= rough.plain_cost


def test_two_runs_agree_even_when_cut_short() -> None:
    """Effort is counted in states, so a busy machine changes nothing."""
    steps, precedences = garment(5, 40, ties=0.05, machines=10, irons=4)
    effort = Effort(states=50, bounds=2000, beam=4)
    assert plan(steps, precedences, effort=effort) == plan(steps, precedences, effort=effort)


def test_prices_of_nothing_leave_the_plain_order() -> None:
    """A maker whom changes cost nothing gets the customary order."""
    nothing = CostTable(0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0)
    steps, precedences = garment(1, 25)
    found = plan(steps, precedences, Setting(nothing))
    assert (0.0, 0.0) == (found.cost, found.plain_cost)
    assert tuple(step.id for step in build(steps, precedences).steps) == found.order


def test_what_changes_no_order_is_not_searched_again() -> None:
    """Words and minutes of a step are no matter; a set-up, a precedence or a price is."""
    steps = [Step(f"s{k}", machine=BLACK if k % 2 else RED, rank=k) for k in range(6)]
    first = plan(steps, [])
    assert plan([replace(step, does="Sew.", minutes=7.0) for step in steps], []) is first
    assert plan(steps, [Precedence("s5", "s0")]) is not first
    assert plan([replace(steps[0], machine=BLACK), *steps[1:]], []) is not first
    assert plan(steps, [], Setting(CostTable(thread=9.0))).cost == 9.0

"""Cutting an order into sittings: where to stop, and what is best."""

from __future__ import annotations

import itertools
import random

import pytest

from advisor.order.search import Setting, plan
from advisor.order.sittings import Couple, split, stops
from advisor.order.steps import IronState, MachineState, Step
from tests.unit.order.order_cases import garment

COOL = IronState(110, "dry", "board")
HOT = IronState(200, "dry", "board")
FOUR = [Step(name, minutes=20.0) for name in "abcd"]


def test_work_may_stop_after_any_step_but_inside_a_couple() -> None:
    """From gathering to joining is one sitting, whatever stands between."""
    assert (1, 2, 3, 4) == stops("abcd", [])
    assert (1, 4) == stops("abcd", [Couple("d", "b", "the gathers are only pinned")])


def test_sittings_are_as_few_and_as_even_as_can_be() -> None:
    """Four times twenty minutes in hours is two and two, not three and one."""
    cut = split(FOUR, 60)
    assert [("a", "b"), ("c", "d")] == [sitting.steps for sitting in cut]
    assert [(40.0, 0.0, 0.0)] * 2 == [(s.minutes, s.change_minutes, s.over) for s in cut]


def test_what_belongs_together_may_run_over() -> None:
    """A couple longer than a sitting stays whole and says by how much it is too long."""
    cut = split(FOUR, 30, [Couple("b", "c")])
    assert [("a",), ("b", "c"), ("d",)] == [sitting.steps for sitting in cut]
    assert [0.0, 10.0, 0.0] == [sitting.over for sitting in cut]


def test_a_stop_spares_the_wait_for_the_iron() -> None:
    """Cooling happens overnight: the stop falls between hot and cool, for one heating."""
    steps = [
        Step("a", iron=HOT, minutes=10),
        Step("b", iron=HOT, minutes=10),
        Step("c", iron=COOL, minutes=10),
        Step("d", iron=COOL, minutes=10),
        Step("e", iron=COOL, minutes=10),
    ]
    cut = split(steps, 35)
    assert [("a", "b"), ("c", "d", "e")] == [sitting.steps for sitting in cut]
    assert [0.0, 1.0] == [sitting.change_minutes for sitting in cut]


def test_the_maker_sits_down_where_she_got_up() -> None:
    """After household, overlocker, household, the next evening's household seam is no turn."""
    names = ["household", "overlocker", "household", "household"]
    seams = [
        Step(
            str(k),
            machine=MachineState(name, "a", "a", "sharp", 80, "b", "c", "d", "e"),
            minutes=10,
        )
        for k, name in enumerate(names)
    ]
    cut = split(seams, 31, [Couple("0", "2")])
    assert [("0", "1", "2"), ("3",)] == [sitting.steps for sitting in cut]
    assert [1.0, 0.0] == [sitting.change_minutes for sitting in cut]


def test_one_long_sitting_has_the_plan_s_changes() -> None:
    """Without a stop, the time is the work and the plan's changes."""
    steps, precedences = garment(4, 30)
    found = plan(steps, precedences)
    byid = {step.id: step for step in steps}
    (only,) = split([byid[name] for name in found.order], 10_000)
    assert found.cost == only.change_minutes
    assert found.cost + sum(step.minutes for step in steps) == only.minutes


@pytest.mark.parametrize("seed", range(10))
def test_no_other_cut_is_better(seed: int) -> None:
    """Of all cuts of nine steps, none has less time over, or as little and fewer sittings."""
    rng = random.Random(seed)
    steps = [
        Step(f"s{k}", iron=rng.choice([None, HOT, COOL]), minutes=rng.choice([5, 10, 25]))
        for k in range(9)
    ]
    couples = [Couple("s2", "s4"), Couple("s7", "s6")]
    cut = split(steps, 30, couples)
    best = (sum(s.over for s in cut), len(cut), sum(s.change_minutes for s in cut))
    assert min(_every(steps, 30, couples)) == best


def test_no_steps_are_no_sittings() -> None:
    """Nothing to do needs no evening."""
    assert () == split([], 60)


def test_a_sitting_has_a_length_and_a_couple_has_steps() -> None:
    """No time, and a step that is not there, are refused."""
    with pytest.raises(ValueError, match="longer than nothing"):
        split(FOUR, 0)
    with pytest.raises(ValueError, match="'z', which is not a step"):
        split(FOUR, 60, [Couple("a", "z")])


def _every(
    steps: list[Step], length: float, couples: list[Couple]
) -> list[tuple[float, int, float]]:
    """The scores of every cut, each sitting priced by itself."""
    inner = stops([step.id for step in steps], couples)[:-1]
    scores = []
    for count in range(len(inner) + 1):
        for cuts in itertools.combinations(inner, count):
            edges = [0, *cuts, len(steps)]
            over = changes = 0.0
            for a, b in itertools.pairwise(edges):
                part = steps[a:b]
                cost = _iron_minutes(part, again=a > 0)
                over += max(0.0, cost + sum(step.minutes for step in part) - length)
                changes += cost
            scores.append((over, len(edges) - 1, changes))
    return scores


def _iron_minutes(part: list[Step], *, again: bool) -> float:
    heats = [step.iron.temperature_c for step in part if step.iron]
    table = Setting().table
    total = table.iron_hotter if heats and again else 0.0
    for a, b in itertools.pairwise(heats):
        total += table.iron_hotter if b > a else table.iron_cooler if b < a else 0.0
    return total

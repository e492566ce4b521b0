"""What must come before what: closure, reduction, chains and the smallest cycle."""

from __future__ import annotations

import pytest

from advisor.errors import Exit
from advisor.order.graph import CycleError, bits, build, settle, smallest_cycle
from advisor.order.steps import Precedence, Step

STEPS = [Step("dart"), Step("press dart"), Step("side seam"), Step("hem"), Step("button")]
SEWN = [
    Precedence("dart", "press dart", "press before crossing"),
    Precedence("press dart", "side seam", "press before crossing"),
    Precedence("dart", "side seam", "darts before the seams that cross them"),
    Precedence("side seam", "hem", "hem last"),
]


def test_what_is_forced_goes_through_other_steps() -> None:
    """The hem waits for everything that its side seam waits for."""
    graph = build(STEPS, SEWN)
    assert ("dart", "press dart", "side seam") == graph.forced_before("hem")
    assert ("press dart", "side seam", "hem") == graph.forced_after("dart")
    assert () == graph.forced_before("button")


def test_the_reduction_leaves_out_what_follows_from_the_rest() -> None:
    """Dart before side seam goes without saying, since its pressing stands between."""
    assert {("dart", "press dart"), ("press dart", "side seam"), ("side seam", "hem")} == {
        (item.before, item.after) for item in build(STEPS, SEWN).reduced()
    }


def test_two_reasons_for_one_precedence_are_both_kept() -> None:
    """A second reason is not a repetition."""
    twice = [Precedence("dart", "hem", "one"), Precedence("dart", "hem", "two")]
    assert ["one", "two"] == [item.why for item in build(STEPS, twice).reduced()]


def test_the_plain_order_is_by_rank_then_id_as_soon_as_a_step_may() -> None:
    """A low rank goes early, but never before what it waits for."""
    steps = [Step("a", rank=2), Step("b", rank=1), Step("c", rank=1), Step("d", rank=0)]
    graph = build(steps, [Precedence("a", "d")])
    assert ["b", "c", "a", "d"] == [step.id for step in graph.steps]


def test_the_smallest_cycle_is_named() -> None:
    """Of a cycle of four and one of two, the one of two is told."""
    ring = [*SEWN, Precedence("hem", "dart"), Precedence("hem", "side seam")]
    with pytest.raises(CycleError) as caught:
        build(STEPS, ring)
    assert {("side seam", "hem"), ("hem", "side seam")} == {
        (item.before, item.after) for item in caught.value.cycle
    }
    assert "no order can satisfy: hem before side seam before hem" == str(caught.value)
    assert Exit.CONFLICT == caught.value.exit


def test_a_step_before_itself_is_a_cycle_of_one() -> None:
    """The smallest cycle there can be."""
    assert (Precedence("hem", "hem"),) == smallest_cycle([*SEWN, Precedence("hem", "hem")])


def test_no_cycle_is_an_empty_one() -> None:
    """Precedences that can be satisfied have no cycle."""
    assert () == smallest_cycle(SEWN)


def test_a_weaker_precedence_is_given_up_for_a_stronger() -> None:
    """A should that contradicts the musts goes, a should that does not stays."""
    wish = Precedence("hem", "dart", "easier to hem flat", strength="should")
    whim = Precedence("button", "hem", "while the box is open", strength="may")
    kept, given_up = settle(STEPS, [whim, wish, *SEWN])
    assert {*SEWN, whim} == set(kept)
    assert (wish,) == given_up


def test_of_a_should_and_a_may_the_may_is_given_up() -> None:
    """Strength decides, not the order they are written in."""
    should = Precedence("hem", "button", strength="should")
    may = Precedence("button", "hem", strength="may")
    assert ((should,), (may,)) == settle(STEPS, [may, should])


def test_musts_in_a_ring_cannot_be_settled() -> None:
    """Giving up a must is not for the planner to decide."""
    with pytest.raises(CycleError):
        settle(STEPS, [*SEWN, Precedence("hem", "dart")])


def test_names_must_be_known_and_single() -> None:
    """A precedence for no step, and a step given twice, are refused by name."""
    with pytest.raises(ValueError, match="'collar', which is not a step"):
        build(STEPS, [Precedence("collar", "hem")])
    with pytest.raises(ValueError, match="two steps are called 'hem'"):
        build([*STEPS, Step("hem")], [])


def test_bits_are_told_lowest_first() -> None:
    """A mask is read from its low end."""
    assert [0, 2, 5] == list(bits(0b100101))

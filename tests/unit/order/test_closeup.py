"""What lies loose waits for its seam no longer than the set-ups allow."""

from __future__ import annotations

from advisor.order.closeup import closed_up
from advisor.order.graph import build
from advisor.order.search import Setting, plan
from advisor.order.sittings import Couple
from advisor.order.steps import MachineState, Precedence, Step

SEWN = MachineState("household", "red", "red", "sharp", 70, "standard", "wide", "301", "balanced")
BLUE = MachineState("household", "blue", "blue", "sharp", 70, "standard", "wide", "301", "balanced")
ROWS = Step("gather", machine=SEWN, rank=1)
HEM = Step("hem", rank=2)
JOIN = Step("join", machine=SEWN, rank=3)
DRAWN_UP = Precedence("gather", "join")


def _order(*steps: Step) -> tuple[str, ...]:
    held = [DRAWN_UP]
    setting, graph = Setting(), build(steps, held)
    return closed_up(plan(steps, held), graph, [Couple("gather", "join")], setting).order


def test_rows_are_stitched_next_to_their_seam() -> None:
    """What needs no machine stands before them."""
    assert ("hem", "gather", "join") == _order(ROWS, HEM, JOIN)


def test_rows_wait_where_the_thread_would_be_changed_for_them() -> None:
    """The frill is joined in the thread of another cloth: going back to its own costs a change."""
    steps = [Step("sew", machine=SEWN), ROWS, Step("hem", machine=BLUE, rank=2)]
    steps += [Step("join", machine=BLUE, rank=3)]
    held = [DRAWN_UP, Precedence("sew", "gather")]
    found = plan(steps, held)
    closed = closed_up(found, build(steps, held), [Couple("gather", "join")], Setting())
    assert ("sew", "gather", "hem", "join") == found.order == closed.order


def test_the_price_and_its_changes_stay_those_of_the_order() -> None:
    """Nothing is paid for it."""
    steps = [Step("sew", machine=BLUE, rank=0), ROWS, HEM, JOIN]
    found = plan(steps, [DRAWN_UP])
    closed = closed_up(found, build(steps, [DRAWN_UP]), [Couple("gather", "join")], Setting())
    assert found.cost == closed.cost == sum(change.minutes for change in closed.changes)


def test_an_allowance_is_graded_as_soon_as_its_seam_is_pressed() -> None:
    """Whatever the custom has between, where no set-up is changed for it."""
    press, grade = Step("press", rank=1), Step("grade", rank=9)
    steps = [Step("sew", machine=SEWN), press, Step("band", machine=SEWN, rank=2), grade]
    held = [Precedence("sew", "press"), Precedence("press", "grade")]
    found, graph = plan(steps, held), build(steps, held)
    assert ("sew", "press", "band", "grade") == found.order
    assert ("sew", "press", "grade", "band") == closed_up(
        found, graph, [], Setting(), ["grade"]
    ).order

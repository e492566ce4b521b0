"""A notion that is asked about by itself: what it says counts, and no machine speaks for it."""

from __future__ import annotations

from typing import Any

import pytest

from advisor.answer.pipeline import answer
from advisor.project.quick import quick_garment
from advisor.render.screen.ask import ask_text
from tests.typed import shipped

SEWN = {"needle.size", "needle.point", "stitch.type", "seam.kind", "seam.finish"}
BARE = ["horn button", "buckle", "magnetic snap", "sleeve head", "hook and bar", "textile glue"]


def seam_of(*layers: str) -> dict[str, Any]:
    told = answer(quick_garment(list(layers), shipped()), shipped())
    return {v.aspect: v for v in told.verdicts if v.scope == "seam"}


@pytest.mark.parametrize("notion", BARE)
def test_nobody_tells_a_needle_of_what_is_not_sewn_yet(notion: str) -> None:
    """A button alone has no needle, stitch, seam or edge; a cloth beside it brings them."""
    assert set() == SEWN & seam_of(notion).keys()
    assert {"needle.size", "stitch.type"} <= seam_of("cotton poplin", notion).keys()


def test_what_the_notion_itself_says_stays() -> None:
    """A frog is sewn by hand, an insertion with a narrow zigzag, a strong thread wants a needle."""
    assert seam_of("frog")["stitch.type"].pick == "hand"
    assert seam_of("lace insertion")["stitch.type"].pick == "304"
    assert seam_of("bonded nylon thread")["needle.size"].pick == 110


@pytest.mark.parametrize("notion", ["bra cup", "braid", "webbing", "buckle"])
def test_no_foot_is_too_low_for_a_notion_alone(notion: str) -> None:
    """It is not laid double under a foot, so it neither clashes nor makes a machine give way."""
    told = answer(quick_garment([notion], shipped()), shipped())
    assert () == tuple(told.conflicts)
    assert "under the foot" not in ask_text(told)


def test_nothing_is_headed_cutting_where_nothing_is_cut() -> None:
    """No heading stands over nothing; with a cloth it is back."""
    known = shipped()
    heading = "PREPARE, CUT AND MARK"
    assert heading not in ask_text(answer(quick_garment(["toggle"], known), known)).upper()
    both = answer(quick_garment(["wool coating", "toggle"], known), known)
    assert heading in ask_text(both).upper()

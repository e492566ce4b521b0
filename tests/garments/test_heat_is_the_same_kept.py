"""An answer whose heat lay on the disk is the one that is worked out, for every demo."""

from __future__ import annotations

from pathlib import Path

import pytest

from advisor.answer.pipeline import Parts, answer
from advisor.heat import kept
from advisor.heat.kept import keep_on
from advisor.heat.model import answer as model
from advisor.heat.model import rhythm
from advisor.overlay.shelf import AnswerShelf
from advisor.project.load import load_project
from tests.typed import CHECKOUT, shipped

DEMOS = sorted((CHECKOUT / "knowledge/examples").glob("*.yaml"))
SMALLEST = "allotment-apron-dress"


@pytest.mark.parametrize("demo", DEMOS, ids=lambda path: path.stem)
def test_what_was_kept_gives_the_answer_that_was_worked_out(
    demo: Path, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    """Every row and every conflict; the second time nothing is left to be worked out.

    All ways of pressing, and how long a press cools, for the smallest.
    """
    garment = load_project(demo, shipped())
    parts = Parts(heat=True, iron=True, ways=demo.stem == SMALLEST)
    empty = AnswerShelf(tmp_path, CHECKOUT / "advisor/heat/model", "numpy")
    kept._KEPT.clear()
    keep_on(empty)
    worked_out = answer(garment, shipped(), parts)
    assert worked_out.heat
    assert parts.ways is any(row.rest_s for row in worked_out.heat)

    def never(*_: object, **__: object) -> None:
        pytest.fail("this was kept")

    monkeypatch.setattr(model, "answers", never)
    monkeypatch.setattr(rhythm, "rests_after", never)
    kept._KEPT.clear()
    assert worked_out == answer(garment, shipped(), parts)
    assert len(list(tmp_path.iterdir())) == len(kept._KEPT) > 0

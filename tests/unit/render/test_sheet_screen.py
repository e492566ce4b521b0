"""The sheet on a screen: the worst first, nothing that spoils cloth left out, no flood."""

from __future__ import annotations

import re
from functools import cache
from pathlib import Path

import pytest

from advisor.answer.model.answer import Answer
from advisor.answer.pipeline import Parts, answer
from advisor.project.load import load_project
from advisor.render.printed.compact import render_sheet
from advisor.render.screen.sheet import sheet_text
from tests.typed import shipped

DEMOS = sorted((Path(__file__).parents[3] / "knowledge" / "examples").glob("*.yaml"))
SCREEN = 40
WIDTHS = (60, 80, 120)


@cache
def told(demo: Path) -> Answer:
    """What the sheet of an example is made of."""
    known = shipped()
    parts = Parts(shopping=True, heat=True, iron=True, order=True, file=demo.name)
    return answer(load_project(demo, known), known, parts)


def flat(text: str) -> str:
    """A text without its line ends."""
    return " ".join(text.split())


@pytest.mark.parametrize("demo", DEMOS, ids=[demo.stem for demo in DEMOS])
def test_the_first_screen_has_the_clashes_and_what_to_do_first(demo: Path) -> None:
    """Each clash with its number, and the steps that are due; settings come behind."""
    report = told(demo)
    lines = sheet_text(report, 80).splitlines()
    assert report.work is not None
    first = flat("\n".join(lines[:SCREEN]))
    for conflict in report.conflicts:
        assert flat(conflict.message) in first
        assert f"{conflict.number} {', '.join(conflict.places)}: " in first
    assert "DO FIRST" in first
    assert lines.index("DO FIRST") < next(i for i, line in enumerate(lines) if "SET EVERY" in line)


@pytest.mark.parametrize("demo", DEMOS, ids=[demo.stem for demo in DEMOS])
def test_no_place_lacks_its_iron_and_its_needle(demo: Path) -> None:
    """Whatever is said once for all places, these each place says itself."""
    report = told(demo)
    text = sheet_text(report, 120)
    table = text[text.index("PLACE BY PLACE") : text.index("PREPARE, CUT")]
    words = re.findall(r"\w+", table)
    irons = [iron for iron in report.irons if iron.scope == "seam"]
    assert len(irons) > 3
    for iron in irons:
        assert set(re.findall(r"\w+", iron.place)) <= set(words), iron.place
        assert set(re.findall(r"\d+", iron.text)) <= set(words), iron.text
    needles = {v.text for v in report.verdicts if v.aspect == "needle.size"}
    assert needles
    assert all(re.findall(r"\d+", needle)[0] in words for needle in needles)


@pytest.mark.parametrize("width", WIDTHS)
def test_it_keeps_to_the_window_and_is_shorter_than_the_paper(width: int) -> None:
    """No line is wider, and beside the printed sheet of 120 columns it is short."""
    for demo in DEMOS:
        text = sheet_text(told(demo), width)
        assert max(map(len, text.splitlines())) <= width
        assert len(text) < len(render_sheet(told(demo)))


def test_what_is_ticked_is_no_longer_due(tmp_path: Path) -> None:
    """The numbers stay, and the next step is told with how many are done."""
    project = tmp_path / "jacket.yaml"
    text = next(demo for demo in DEMOS if "jacket" in demo.name).read_text("utf-8")
    done = 'done: ["try the lengths", "shrink cuff", "shrink frill"]\n'
    project.write_text(text + done, encoding="utf-8")
    work = told(project).work
    assert work is not None
    screen = flat(sheet_text(told(project), 80))
    assert f"DO NEXT (3 OF {len(work.order)} STEPS DONE)" in screen
    assert "4-6 Shrink lining, shell, woven fusible interfacing." in screen

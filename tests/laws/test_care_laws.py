"""What the sheet says of the care of a garment and what its label says are the same."""

from __future__ import annotations

from pathlib import Path

import pytest

from advisor.answer.label import Asked
from advisor.answer.model.answer import Answer
from advisor.answer.pipeline import Parts, tell
from advisor.knowledge.labels import CARE
from tests.garments.whole import FILES, decided, known, told


def on_the_sheet(found: Answer) -> dict[str, object]:
    """The care of the garment as the sheet tells it."""
    return {v.aspect: v.pick for v in found.verdicts if v.scope == "garment" and v.aspect in CARE}


@pytest.mark.parametrize("file", FILES, ids=lambda path: path.stem)
def test_sheet_and_label_say_the_same_of_care(file: Path) -> None:
    """Wash, bleach, dry, iron and dry clean: one answer each, and silence allows on neither."""
    for market in ("eu", "us"):
        _same_care(tell(decided(file), known(), Parts(label=Asked(market))))


def _same_care(found: Answer) -> None:
    assert found.label is not None
    lines = {line.aspect: line for line in found.label.care.lines}
    assert set(CARE) == set(lines)
    sheet = on_the_sheet(found)
    for aspect, line in lines.items():
        if line.answer is not None:
            steamless = "steam" in (line.line or "") and line.answer == "110"
            assert sheet[aspect] == ("110 no steam" if steamless else line.answer), aspect


def test_a_cloth_of_which_nobody_speaks_is_named_as_the_reason() -> None:
    """Bleach is ruled out by silence, and the sheet says whose."""
    (file,) = [f for f in FILES if f.stem == "cotton_dress_nylon_zip_is_ordinary"]
    found = told(file)
    (bleach,) = [v for v in found.verdicts if (v.scope, v.aspect) == ("garment", "care.bleach")]
    assert "no bleach" == bleach.pick
    assert any(c.who == "shell" and "silence" in c.why for c in bleach.because)

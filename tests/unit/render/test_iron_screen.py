"""The iron on one screen: all places of a garment in a table, or one as at the board."""

from __future__ import annotations

from functools import cache
from pathlib import Path

import pytest

from advisor.answer.model.answer import Answer
from advisor.answer.pipeline import Parts, answer
from advisor.errors import InputError
from advisor.project.load import load_project
from advisor.render.screen.iron import iron_screen_text
from tests.typed import shipped

DEMOS = sorted((Path(__file__).resolve().parents[3] / "knowledge" / "examples").glob("*.yaml"))


@cache
def told(path: Path) -> Answer:
    known = shipped()
    return answer(load_project(path, known), known, Parts(heat=True, iron=True))


@pytest.mark.parametrize("path", DEMOS, ids=lambda path: path.stem)
def test_every_place_stands_in_the_table_with_its_setting(path: Path) -> None:
    """Nothing that is pressed is left out, and every setting is the answer's own."""
    one = told(path)
    text = " ".join(iron_screen_text(one, width=110).split())
    for iron in one.irons:
        if iron.scope == "seam":
            assert iron.place.split()[0] in text
            assert iron.text.split(";")[0].split()[0] in text
    for conflict in one.conflicts:
        if conflict.aspect.startswith("press."):
            assert " ".join(conflict.message.split()[:6]) in text


@pytest.mark.parametrize("path", DEMOS, ids=lambda path: path.stem)
def test_a_place_by_itself_fits_one_screen(path: Path) -> None:
    """Every place of every demo, at 60 columns: under forty lines, none too long."""
    one = told(path)
    for seam in one.seams:
        lines = iron_screen_text(one, seam.name, 60).splitlines()
        assert max(map(len, lines)) <= 62, seam.name
        clashes = [c for c in one.conflicts if seam.name in c.places]
        assert len(lines) <= 40 + 14 * len(clashes), seam.name


def test_a_place_that_is_not_there_is_named_with_the_nearest() -> None:
    """One message, with the place that was perhaps meant."""
    jacket = told(next(path for path in DEMOS if "jacket" in path.stem))
    with pytest.raises(InputError, match="no place 'hem fril'"):
        iron_screen_text(jacket, "hem fril")


def test_the_name_of_a_place_may_be_typed_in_capitals() -> None:
    """What is printed is accepted, whatever its case."""
    jacket = told(next(path for path in DEMOS if "jacket" in path.stem))
    assert iron_screen_text(jacket, "Hem Frill") == iron_screen_text(jacket, "hem frill")

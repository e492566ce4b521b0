"""Whoever asks gets the same answer to the same garment: conflicts, numbers, code, figures."""

from __future__ import annotations

from functools import cache
from pathlib import Path
from typing import Any

import pytest
from jsonschema import Draft202012Validator
from pydantic import TypeAdapter

from advisor.answer.forms import json_schema
from advisor.answer.label import Asked
from advisor.answer.model.answer import Answer
from advisor.answer.pipeline import Parts, answer
from advisor.project.garment import Garment
from advisor.project.load import load_project
from advisor.project.quick import quick_garment
from tests.told import written
from tests.typed import shipped as known

CHECKOUT = Path(__file__).resolve().parents[2]
FILES = sorted(
    [
        *(CHECKOUT / "knowledge" / "examples").glob("*.yaml"),
        *(CHECKOUT / "tests" / "garments").glob("*.yaml"),
    ]
)
VIEWS = {
    "check": Parts(),
    "sheet": Parts(shopping=True, heat=True, iron=True, order=True),
    "iron": Parts(heat=True, ways=True, iron=True),
    "order": Parts(order=True),
    "label": Parts(label=Asked("eu")),
}
STACKS = (
    ["wool coating", "woven fusible interfacing", "wool coating"],
    ["cotton velveteen", "acetate satin", "nylon tulle"],
    ["nylon organza", "linen suiting"],
)


@pytest.fixture(scope="module", params=FILES, ids=lambda path: path.stem)
def file(request: pytest.FixtureRequest) -> Path:
    """A garment; all that is tried of one stands together, so that its views are made once."""
    found: Path = request.param
    return found


@cache
def views(file: Path) -> dict[str, Answer]:
    garment = load_project(file, known())
    return {name: answer(garment, known(), parts) for name, parts in VIEWS.items()}


def told_of(one: Answer) -> dict[str, Any]:
    """What every view has to have alike."""
    data = written(one)
    return {key: data[key] for key in ("verdicts", "conflicts", "cure_all", "instructions")}


def test_every_view_of_a_garment_has_the_same_conflicts_numbers_and_code(file: Path) -> None:
    """Check, sheet, iron, order and label decide nothing of their own."""
    found = views(file)
    wanted = found["sheet"]
    for name, one in found.items():
        assert wanted.code == one.code, name
        assert told_of(wanted) == told_of(one), name
    assert list(range(1, len(wanted.conflicts) + 1)) == [c.number for c in wanted.conflicts]


def test_the_heat_of_a_press_is_the_same_on_sheet_and_iron(file: Path) -> None:
    """A press as advised, and dried out, has one budget of seconds, whoever prints it."""

    def budgets(one: Answer) -> dict[tuple[str, str], float | None]:
        rows = one.heat or ()
        return {
            (r.place, r.way): r.press_at_most_s for r in rows if r.way in ("advised", "dried out")
        }

    sheet, iron = budgets(views(file)["sheet"]), budgets(views(file)["iron"])
    shared = sheet.keys() & iron.keys()
    assert bool(shared) == bool(iron)
    assert {key: sheet[key] for key in shared} == {key: iron[key] for key in shared}


@pytest.mark.parametrize("stack", STACKS, ids=" + ".join)
def test_a_question_has_the_same_conflicts_as_its_iron(stack: list[str]) -> None:
    """What `iron` finds wrong with some cloths, `ask` finds as well."""
    garment: Garment = quick_garment(list(stack), known())
    asked, iron = answer(garment, known()), answer(garment, known(), VIEWS["iron"])
    assert asked.code == iron.code
    assert told_of(asked) == told_of(iron)


def test_what_is_written_reads_back_as_the_same_answer() -> None:
    """The data hold the whole answer: nothing of a verdict or a conflict is lost in writing."""
    (file,) = [path for path in FILES if path.stem == "bandstand-jacket"]
    one = views(file)["sheet"]
    data = written(one)
    for conflict, row in zip(one.conflicts, data["conflicts"], strict=True):
        assert conflict == TypeAdapter(type(conflict)).validate_python(row)
    assert len(one.verdicts) == len(data["verdicts"])


def test_what_is_written_fits_its_schema(file: Path) -> None:
    """`advisor schema answer` describes what `--json` writes, in every view."""
    check = Draft202012Validator(json_schema("answer", known()))
    fitting: list[tuple[str, Any]] = []
    for name, one in views(file).items():
        new = {key: _shortened(key, told, fitting) for key, told in written(one).items()}
        assert [] == [f"{name}: {e.message}" for e in check.iter_errors(new)]
        fitting += written(one).items()


def _shortened(key: str, told: Any, fitting: list[tuple[str, Any]]) -> Any:
    """A list that was found to fit is not gone through again: its first row stands for it."""
    return told[:1] if isinstance(told, list) and (key, told) in fitting else told


def test_a_list_that_differs_is_gone_through_again() -> None:
    """Only what stands word for word in a view that fits is left out."""
    assert [1] == _shortened("a", [1, 2], [("a", [1, 2])])
    assert [1, 3] == _shortened("a", [1, 3], [("a", [1, 2])])
    assert [1, 2] == _shortened("b", [1, 2], [("a", [1, 2])])

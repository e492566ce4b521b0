"""`told where`: its words are checked with file, line and column, and compiled once."""

from __future__ import annotations

from pathlib import Path

import pytest

from advisor.knowledge.load import read_book
from advisor.knowledge.model import from_plain
from advisor.knowledge.telling import ToldWhere
from advisor.knowledge.vocabulary import check_book
from advisor.overlay.cache import compile_folder
from tests.unit.knowledge.small_book import write_book

RULE = """\
id: warm
claim: A warm iron helps.
why: It does.
when: {layer: {kind: cloth}}
%s
sources: [habit]
examples: {fires: [{layers: [velvet]}], quiet: [{layers: [{notion: zip}]}]}
"""


def written(area: str, body: str) -> dict[str, str | None]:
    return {f"rules/{area}/warm.yaml": RULE % body}


def told(folder: Path, area: str, body: str) -> dict[str, tuple[ToldWhere, ...]]:
    """The conditions of a rule in the small knowledge."""
    known = from_plain(compile_folder(write_book(folder, written(area, body))))
    return next(rule.told for rule in known.rules if rule.id == "warm")


@pytest.mark.parametrize(
    ("condition", "message", "meant"),
    [
        ("{press.tempreature: {at least: 110}}", "unknown aspect", "press.temperature"),
        ("{press.temperature: {atleast: 110}}", "'atleast' is not asked", "at least"),
        ("{press.temperature: [110]}", "takes `at least` or `at most`", ""),
        ("{press.temperature: {at least: 300}}", "a number from 20 to 210", ""),
        ("{press.moisture: {at least: stem}}", "'stem' is no word", "steam"),
        ("{cut.hold: [pin]}", "'pin' is no option", "pins"),
        ("{cut.hold: {not: [wieghts]}}", "'wieghts' is no option", "weights"),
        ("{cut.hold: {at least: pins}}", "'at least' is not asked", ""),
        ("{cut.hold: pins}", "takes a list of options", ""),
    ],
)
def test_a_wrong_word_is_told_with_its_place(
    tmp_path: Path, condition: str, message: str, meant: str
) -> None:
    """Of the whole rule and of one line alike."""
    body = f"told where: {condition}\ndo: [Do it.]"
    (whole,) = check_book(read_book(write_book(tmp_path, written("cut", body))))
    assert message in whole.message
    assert whole.where is not None
    assert whole.where.line == 5
    assert whole.where.column is not None
    assert meant in (*whole.nearest, "")
    body = f"do:\n  - Do it.\n  - text: Do more.\n    told where: {condition}"
    (single,) = check_book(read_book(write_book(tmp_path, written("cut", body))))
    assert single.where is not None
    assert single.where.line == 8
    assert single.message == whole.message


def test_an_area_without_a_default_tells_everything(tmp_path: Path) -> None:
    """Nothing that was decided keeps a line about cutting back."""
    assert told(tmp_path, "cut", "do: [Cut it.]") == {}


def test_what_is_no_condition_is_refused(tmp_path: Path) -> None:
    """A lone word is `always` or nothing."""
    body = "told where: allways\ndo: [Do it.]"
    found = check_book(read_book(write_book(tmp_path, written("cut", body))))
    assert found


def test_conditions_are_sets_of_what_has_to_be_left(tmp_path: Path) -> None:
    """A span for what has an order, a mask of options, and the list of what is avoided."""
    body = (
        "told where: {press.moisture: {at least: damp cloth}, cut.hold: {not: [pins]},\n"
        "  design.avoids: {not: [tucks]}}\ndo: [Do it.]"
    )
    damp, held, avoided = told(tmp_path, "cut", body)["do"]
    assert (damp.span, damp.machine) == ((1.0, 2.0), False)
    assert (held.mask, held.how) == (0b10, "some")
    assert (avoided.mask, avoided.how) == (0b10, "all")


def test_an_area_speaks_for_a_rule_that_says_nothing(tmp_path: Path) -> None:
    """How to press is told where an iron comes; an injury is held back by no default."""
    body = (
        "do: [Press it.]\ncautions:\n  - {kind: burn, text: It is hot.}\n"
        "  - {kind: damage, text: It shines.}"
    )
    found = told(tmp_path, "press", body)
    assert [one.aspect for one in found["do"]] == ["press.temperature"]
    assert found["do"][0].span == (110.0, 210.0)
    assert found["cautions 0"] == ()
    assert "cautions 1" not in found


def test_the_reason_why_no_iron_comes_is_always_told(tmp_path: Path) -> None:
    """A rule that keeps the iron away has no default; one that only cools it has."""
    claim = "then: [{aspect: press.temperature, max: %d}]\ndo: [Use the fingers.]"
    assert told(tmp_path, "press", claim % 20) == {}
    assert told(tmp_path, "press", claim % 150)["do"]


def test_a_line_may_be_told_elsewhere_than_its_rule(tmp_path: Path) -> None:
    """Its own condition stands instead of the rule's, and `always` is none."""
    body = "do:\n  - Press it.\n  - {text: Look at it., told where: always}"
    found = told(tmp_path, "press", body)
    assert found["do"]
    assert found["do 1"] == ()

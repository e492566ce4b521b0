"""Answers of the heat model that are kept: the same ones, and each of them worked out once."""

from __future__ import annotations

import json
from collections.abc import Callable, Mapping, Sequence
from typing import Any

import pytest
from msgspec.structs import replace

from advisor.heat import kept
from advisor.heat.kept import answers_once, rests_once
from advisor.heat.model import answer as model
from advisor.heat.model import rhythm
from advisor.heat.model.dialogue import Glue, HeatAnswer, HeatQuestion, Times
from advisor.heat.model.hardparts import PARTS
from advisor.heat.model.materials import Layer, Range
from advisor.heat.model.stack import Stack, sole_for_dots, under_iron

CLOTH = Layer("x", Range(0.2, 0.25, 0.3), 120.0, Range(0.05, 0.06, 0.07), Range(1220, 1300, 1350))
ONE, TWO = (under_iron([CLOTH], sole_for_dots(dots)) for dots in (1, 2))


@pytest.fixture
def solved(monkeypatch: pytest.MonkeyPatch) -> list[int]:
    """How many questions were worked out at each call, beginning with nothing kept."""
    found: list[int] = []
    plain = model.answers

    def counted(questions: Sequence[HeatQuestion], **more: Any) -> tuple[HeatAnswer, ...]:
        found.append(len(questions))
        return plain(questions, **more)

    kept._KEPT.clear()
    monkeypatch.setattr(kept._Beside, "shelf", None)
    monkeypatch.setattr(model, "answers", counted)
    return found


def test_a_question_is_worked_out_once_whatever_its_place_is_called(solved: list[int]) -> None:
    """Places of the same layers share an answer, which bears the name of each."""
    asked = [HeatQuestion("a", ONE), HeatQuestion("b", TWO), HeatQuestion("c", ONE)]
    first = answers_once(asked, 2)
    assert ["a", "b", "c"] == [one.place for one in first]
    again = answers_once([HeatQuestion("d", TWO), HeatQuestion("e", ONE, press_s=4.0)], 2)
    assert [2, 1] == solved
    assert model.answers([HeatQuestion("d", TWO)], samples=2)[0] == again[0]


def test_another_number_of_draws_is_another_question(solved: list[int]) -> None:
    """What fewer draws said is not told where more are asked for."""
    for samples in (2, 3, 2):
        answers_once([HeatQuestion("a", ONE)], samples)
    assert [1, 1] == solved


def test_what_was_not_asked_for_long_is_let_go(
    solved: list[int], monkeypatch: pytest.MonkeyPatch
) -> None:
    """No more is kept than there is room for, the latest of it."""
    monkeypatch.setattr(kept, "MOST", 1)
    for stack in (ONE, TWO, TWO, ONE):
        answers_once([HeatQuestion("a", stack)], 2)
    assert [1, 1, 1] == solved
    assert 1 == len(kept._KEPT)


class Board:
    """A shelf in memory that goes through text as the one on the disk does."""

    def __init__(self) -> None:
        self.texts: dict[str, str] = {}

    def fetch(self, asked: str) -> dict[str, Any] | None:
        """As it was laid there."""
        found = self.texts.get(asked)
        return None if found is None else json.loads(found)

    def keep(self, found: Mapping[str, dict[str, Any]]) -> None:
        """Lay it there."""
        self.texts |= {asked: json.dumps(data) for asked, data in found.items()}


@pytest.fixture
def board(monkeypatch: pytest.MonkeyPatch) -> Board:
    """An empty shelf that is in use."""
    made = Board()
    monkeypatch.setattr(kept._Beside, "shelf", made)
    return made


def test_another_run_finds_the_same_answer_on_the_shelf(solved: list[int], board: Board) -> None:
    """To the last digit, and nothing is worked out."""
    glued = under_iron([CLOTH, replace(CLOTH, name="glued", limit_c=110.0)], sole_for_dots(3))
    asked = [
        HeatQuestion("a", ONE, parts=(("x", PARTS["pin"]),)),
        HeatQuestion("b", glued, "dry", Glue(0, 120.0)),
    ]
    first, rests = answers_once(asked, 2), rests_once([ONE, TWO], 10.0)
    kept._KEPT.clear()
    assert first == answers_once(asked, 2)
    assert rests == rests_once([ONE, TWO], 10.0)
    assert [2] == solved
    assert first[0].touch_safe_after is not None
    assert first[1].glue is not None
    assert 4 == len(board.texts)


def test_rests_are_worked_out_once(monkeypatch: pytest.MonkeyPatch, board: Board) -> None:
    """Another press is another rest; the same one is kept."""
    counted: list[int] = []
    plain = rhythm.rests_after

    def counting(stacks: Sequence[Stack], press_s: float) -> tuple[Times, ...]:
        counted.append(len(stacks))
        return plain(stacks, press_s)

    kept._KEPT.clear()
    monkeypatch.setattr(rhythm, "rests_after", counting)
    long = rests_once([ONE], 10.0)
    short = rests_once([ONE, ONE], 2.0)
    assert short[0] == short[1] != long[0]
    assert long == rests_once([ONE], 10.0)
    assert [1, 1] == counted


def _spoilt() -> dict[str, Callable[[dict[str, Any]], object]]:
    return {
        "no layers": lambda data: data.pop("layers"),
        "a word for a number": lambda data: data.update(sole={"low": "a", "mid": 1.0, "high": 2.0}),
        "yes for a number": lambda data: data.update(sole={"low": 0.0, "mid": True, "high": 2.0}),
        "not a number": lambda data: data.update(press_at_most_s=float("nan")),
        "a falling band": lambda data: data.update(sole={"low": 3.0, "mid": 2.0, "high": 1.0}),
        "a number for a word": lambda data: data.update(moisture=3),
        "two ends": lambda data: data.update(touch_safe_after={"low": 1.0, "mid": 2.0}),
        "no list": lambda data: data.update(layers=3),
        "a list for a glue": lambda data: data.update(glue=[1.0, 2.0]),
        "glue without its ends": lambda data: data.update(glue={"over_limit": True}),
    }


@pytest.mark.parametrize("spoil", _spoilt().values(), ids=_spoilt())
def test_what_is_no_answer_is_worked_out_anew(
    solved: list[int], board: Board, spoil: Callable[[dict[str, Any]], object]
) -> None:
    """Whatever lies on the shelf, the answer is that of the model."""
    first = answers_once([HeatQuestion("a", ONE)], 2)
    for key, text in board.texts.items():
        data = json.loads(text)
        spoil(data)
        board.texts[key] = json.dumps(data)
    kept._KEPT.clear()
    assert first == answers_once([HeatQuestion("a", ONE)], 2)
    assert [1, 1] == solved

"""Answers of the heat model that are kept: the same ones, and each of them worked out once."""

from __future__ import annotations

from collections.abc import Sequence
from typing import Any

import pytest

from advisor.heat import kept
from advisor.heat.kept import answers_once
from advisor.heat.model import answer as model
from advisor.heat.model.answer import HeatAnswer, Question
from advisor.heat.model.materials import Layer, Range
from advisor.heat.model.stack import sole_for_dots, under_iron

CLOTH = Layer("x", Range(0.2, 0.25, 0.3), 120.0, Range(0.05, 0.06, 0.07), Range(1220, 1300, 1350))
ONE, TWO = (under_iron([CLOTH], sole_for_dots(dots)) for dots in (1, 2))


@pytest.fixture
def solved(monkeypatch: pytest.MonkeyPatch) -> list[int]:
    """How many questions were worked out at each call, beginning with nothing kept."""
    found: list[int] = []
    plain = model.answers

    def counted(questions: Sequence[Question], **more: Any) -> tuple[HeatAnswer, ...]:
        found.append(len(questions))
        return plain(questions, **more)

    kept._KEPT.clear()
    monkeypatch.setattr(model, "answers", counted)
    return found


def test_a_question_is_worked_out_once_whatever_its_place_is_called(solved: list[int]) -> None:
    """Places of the same layers share an answer, which bears the name of each."""
    asked = [Question("a", ONE), Question("b", TWO), Question("c", ONE)]
    first = answers_once(asked, 2)
    assert ["a", "b", "c"] == [one.place for one in first]
    again = answers_once([Question("d", TWO), Question("e", ONE, press_s=4.0)], 2)
    assert [2, 1] == solved
    assert model.answers([Question("d", TWO)], samples=2)[0].as_json() == again[0].as_json()


def test_another_number_of_draws_is_another_question(solved: list[int]) -> None:
    """What fewer draws said is not told where more are asked for."""
    for samples in (2, 3, 2):
        answers_once([Question("a", ONE)], samples)
    assert [1, 1, 0] == solved


def test_what_was_not_asked_for_long_is_let_go(
    solved: list[int], monkeypatch: pytest.MonkeyPatch
) -> None:
    """No more is kept than there is room for, the latest of it."""
    monkeypatch.setattr(kept, "MOST", 1)
    for stack in (ONE, TWO, TWO, ONE):
        answers_once([Question("a", stack)], 2)
    assert [1, 1, 0, 1] == solved
    assert 1 == len(kept._KEPT)

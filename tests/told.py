"""The answer to a garment as tests ask for it: the types, or the data that is written."""

from __future__ import annotations

from typing import Any

from pydantic import TypeAdapter

from advisor.answer.model.answer import Answer
from advisor.answer.model.heat import ToldHeat
from advisor.answer.model.told import ToldPlace, ToldVerdict
from advisor.answer.pipeline import Parts, answer
from advisor.claims.judgement import Advice
from advisor.decide.gluing import with_clashes
from advisor.heat.gluing import trials_of
from advisor.heat.questions import ask_trials
from advisor.knowledge.model import Knowledge
from advisor.project.garment import Garment
from advisor.records import as_data


def with_glue(advice: Advice, knowledge: Knowledge) -> Advice:
    """The advice that `advise_with_heat` gives, without the courses that no clash comes of.

    Fusibles alone clash by the heat; `tests/unit/heat/test_heat_questions.py` holds that it is the
    same.
    """
    tried = ask_trials(trials_of(advice.judgement, knowledge))
    return with_clashes(advice, tried, knowledge, ask_trials)


def data_of(garment: Garment, knowledge: Knowledge, parts: Parts | None = None) -> dict[str, Any]:
    """The JSON contract of an answer."""
    return written(answer(garment, knowledge, parts))


def written(told: Answer) -> dict[str, Any]:
    """An answer that is there already, as data."""
    data = as_data(told)
    assert isinstance(data, dict)
    return data


def heat_row(**said: Any) -> ToldHeat:
    """A row of heat that says only what a test is about."""
    plain: dict[str, Any] = {
        "place": "hem",
        "way": "advised",
        "sole_c": (105.0, 130.0, 155.0),
        "mark": "two dots",
        "wanted_by": (),
        "cloth": None,
        "moisture": "dry",
        "layers": (),
        "touch_safe_after_s": None,
        "hard_parts": (),
        "press_at_most_s": None,
        "limited_by": None,
        "assumed": {},
        "computed": "computed, not measured",
        "sources": (),
    }
    return TypeAdapter(ToldHeat).validate_python({**plain, **said})


def verdict_row(aspect: str, text: str, **said: Any) -> ToldVerdict:
    """A verdict that says only what a test is about."""
    plain: dict[str, Any] = {
        "aspect": aspect,
        "scope": "seam",
        "place": "hem",
        "kind": "range",
        "options": None,
        "unit": "",
        "low": None,
        "high": None,
        "pick": None,
        "text": text,
        "because": (),
        "given_up": (),
    }
    return ToldVerdict(**{**plain, **said})


def heat_answer(
    rows: list[ToldHeat],
    dwell: tuple[float | None, float | None] | None = None,
    places: dict[str, tuple[str, ...]] | None = None,
) -> Answer:
    """An answer of some rows of heat, with what the rules say of the seconds."""
    ruled: tuple[ToldVerdict, ...] = ()
    if dwell is not None:
        ruled = (verdict_row("press.dwell", "", low=dwell[0], high=dwell[1]),)
    seams = tuple(ToldPlace(name, layers, {}, ()) for name, layers in (places or {}).items())
    return Answer(
        schema="advisor.answer/1",
        garment="test",
        units="metric",
        layers=(),
        seams=seams,
        verdicts=ruled,
        irons=(),
        conflicts=(),
        cure_all=None,
        instructions=(),
        cautions=(),
        advice=(),
        tests=(),
        unknowns=(),
        sources=(),
        heat=tuple(rows),
    )

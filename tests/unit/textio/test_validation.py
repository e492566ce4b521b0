from __future__ import annotations

from typing import Literal

import pytest
from pydantic import BaseModel, ConfigDict, Field, ValidationError, field_validator

from advisor.errors import Problem
from advisor.textio.validation import problems_from_validation
from advisor.textio.yamlfile import parse_yaml


class Strict(BaseModel):
    """A schema that knows all its keys."""

    model_config = ConfigDict(extra="forbid", strict=True)


class Use(Strict):
    """A layer that names a cloth and how much of it is gathered in."""

    use: str
    fullness: float = Field(1, ge=1, le=5)


class Notion(Strict):
    """A layer that is a notion."""

    notion: str


class Seam(Strict):
    """Layers sewn together."""

    name: str = Field(min_length=1)
    layers: list[str | Use | Notion] = Field([], max_length=3)
    stress: Literal["low", "medium", "high"] = "medium"
    length: float | None = None
    count: int = 1


class Garment(Strict):
    """The whole file."""

    garment: str
    foot_lift: str = Field("6 mm", alias="foot lift")
    seams: list[Seam] = Field([], min_length=1)
    cloths: dict[str, Use] = {}

    @field_validator("garment")
    @classmethod
    def _named(cls, value: str) -> str:
        if value == "x":
            raise ValueError("a garment needs a name that tells what it is")
        return value


def problems(text: str) -> tuple[Problem, ...]:
    """Return what is wrong with a text by the schema above."""
    document = parse_yaml(text, "p.yaml")
    with pytest.raises(ValidationError) as caught:
        Garment.model_validate(document.data)
    return problems_from_validation(
        caught.value, document.data, document.positions, document.file, model=Garment
    )


SEAM = "garment: g\nseams:\n  - name: hem\n    {}\n"
CASES = [
    ("seams: [{name: a}]", "p.yaml:1:1: missing key 'garment'"),
    ("garment: x", "p.yaml:1:10: 'garment': a garment needs a name that tells what it is"),
    ("garment: [g]", "p.yaml:1:10: 'garment': must be text, not a list"),
    ("garment: 7", "p.yaml:1:10: 'garment': must be text, not 7"),
    ("garment:", "p.yaml:1:9: 'garment': must be text, not nothing"),
    ("garment: true", "p.yaml:1:10: 'garment': must be text, not true"),
    ("garment: g\nseems: []", "p.yaml:2:1: unknown key 'seems'. Did you mean 'seams'?"),
    ("garment: g\nfoot lit: 5", "p.yaml:2:1: unknown key 'foot lit'. Did you mean 'foot lift'?"),
    (
        "garment: g\nqqq: 1",
        "p.yaml:2:1: unknown key 'qqq'. Expected one of garment, foot lift, seams, cloths.",
    ),
    ("garment: g\nseams: []", "p.yaml:2:8: 'seams': must not be empty"),
    (
        "garment: g\nseams: {side: 7}",
        (
            "p.yaml:2:8: 'seams': must be a list, not keys with their values. Expected each on a "
            "line of its own that begins with a dash, as '- {...}'."
        ),
    ),
    ("garment: g\nseams: [7]", "p.yaml:2:9: 'seams': must be keys with their values, not 7"),
    ("garment: g\nseams:\n  - count: 1", "p.yaml:3:5: missing key 'name'"),
    ("garment: g\nseams: [{name: ''}]", "p.yaml:2:16: 'name': must not be empty"),
    (
        SEAM.format("stress: hgh"),
        (
            "p.yaml:4:13: 'stress': unknown word 'hgh'. Expected one of low, medium, high. "
            "Did you mean 'high'?"
        ),
    ),
    (SEAM.format("length: wide"), "p.yaml:4:13: 'length': must be a number, not 'wide'"),
    (SEAM.format("count: 1.5"), "p.yaml:4:12: 'count': must be a whole number, not 1.5"),
    (SEAM.format("layers: [a, b, c, d]"), "p.yaml:4:13: 'layers': may have at most 3 entries"),
    (
        SEAM.format("layers: [{use: f, fullness: 0.5}]"),
        "p.yaml:4:33: 'fullness': must be at least 1, not 0.5",
    ),
    (
        SEAM.format("layers: [{use: f, fullness: 9}]"),
        "p.yaml:4:33: 'fullness': must be at most 5, not 9",
    ),
    (
        SEAM.format("layers: [a, {use: f, fulness: 2}]"),
        "p.yaml:4:26: unknown key 'fulness'. Did you mean 'fullness'?",
    ),
    (
        SEAM.format("layers: [5]"),
        "p.yaml:4:14: 'layers': must be text or keys with their values, not 5",
    ),
    (SEAM.format("layers: [{}]"), "p.yaml:4:14: missing key 'use' or 'notion'"),
    ("garment: g\ncloths:\n  a: {}", "p.yaml:3:3: missing key 'use'"),
    (
        "garment: g\ncloths:\n  a: {use: f, fulness: 1}",
        "p.yaml:3:15: unknown key 'fulness'. Did you mean 'fullness'?",
    ),
    ("[garment]", "p.yaml:1:1: must be keys with their values, not a list"),
]


@pytest.mark.parametrize(("text", "expected"), CASES, ids=range(len(CASES)))
def test_each_fault_is_one_plain_line_at_its_place(text: str, expected: str) -> None:
    """One fault in the file is one problem, at the key or value that is wrong."""
    assert [expected] == [str(problem) for problem in problems(text)]


def test_several_faults_come_in_the_order_of_the_file() -> None:
    """A reader mends from the top; the schema's own order does not show."""
    found = problems("wrong: 1\nseams:\n  - {name: 5, stress: hi}\ngarment: x\n")
    assert [1, 3, 3, 4] == [problem.where.line for problem in found if problem.where]


def test_a_group_that_fits_no_reading_names_the_keys_of_all() -> None:
    """Where two readings are equally unlikely, keys of both are offered."""
    found = [str(problem) for problem in problems(SEAM.format("layers: [{qqq: 1}]"))]
    assert found == [
        "p.yaml:4:14: missing key 'use' or 'notion'",
        "p.yaml:4:15: unknown key 'qqq'. Expected one of use, fullness, notion.",
    ]


def test_two_keys_that_one_group_lacks_are_two_problems() -> None:
    """Missing keys are joined by 'or' only when one of them would do."""

    class Pair(Strict):
        left: str
        right: str

    document = parse_yaml("{}", "p.yaml")
    with pytest.raises(ValidationError) as caught:
        Pair.model_validate(document.data)
    found = problems_from_validation(
        caught.value, document.data, document.positions, "p.yaml", model=Pair
    )
    assert [str(problem) for problem in found] == [
        "p.yaml:1:1: missing key 'left'",
        "p.yaml:1:1: missing key 'right'",
    ]


def test_long_input_is_cut_when_it_is_quoted() -> None:
    """A page of text given for a word does not fill the screen."""
    text = str(problems(SEAM.format(f"stress: {'x' * 500}"))[0])
    assert len(text) < 150

"""Records go to plain data and back as they were, and data of another shape are found out."""

from __future__ import annotations

import ast
import json
from collections.abc import Mapping
from pathlib import Path
from typing import Any, Literal

import pytest
from hypothesis import given
from hypothesis import strategies as st
from msgspec import Struct, field

from advisor.records import as_mapping, from_data


class Leaf(Struct, frozen=True):
    """A word, a number that may be lacking, and one of two words."""

    word: str
    number: float | None = None
    side: Literal["left", "right"] = "left"


class Branch(Struct, frozen=True):
    """One of everything that a record may hold."""

    name: str
    count: int
    open_: bool
    leaf: Leaf | None
    leaves: tuple[Leaf, ...]
    pair: tuple[str, float]
    found: Mapping[str, tuple[int, ...]]
    rest: dict[str, Any] = field(default_factory=dict)


WORDS = st.text(max_size=5)
NUMBERS = st.floats(allow_nan=False, allow_infinity=False)
LEAVES = st.builds(Leaf, WORDS, st.none() | NUMBERS, st.sampled_from(["left", "right"]))
BRANCHES = st.builds(
    Branch,
    WORDS,
    st.integers(),
    st.booleans(),
    st.none() | LEAVES,
    st.lists(LEAVES, max_size=3).map(tuple),
    st.tuples(WORDS, NUMBERS),
    st.dictionaries(WORDS, st.lists(st.integers(), max_size=3).map(tuple), max_size=3),
    st.dictionaries(WORDS, st.integers() | WORDS, max_size=2),
)


@given(BRANCHES)
def test_a_record_comes_back_as_it_was(branch: Branch) -> None:
    """Through text, every number to its last digit."""
    assert branch == from_data(Branch, json.loads(json.dumps(as_mapping(branch))))


GOOD: dict[str, Any] = {
    "name": "a",
    "count": 1,
    "open": True,
    "leaf": None,
    "leaves": [],
    "pair": ["b", 1.0],
    "found": {},
}


@pytest.mark.parametrize(
    "spoilt",
    [
        {"name": 3},
        {"count": 1.5},
        {"count": True},
        {"open": "perhaps"},
        {"leaf": "oak"},
        {"leaves": {"word": "a"}},
        {"leaves": [{"number": 1.0}]},
        {"leaves": [{"word": "a", "number": float("inf")}]},
        {"leaves": [{"word": "a", "side": "top"}]},
        {"pair": ["b"]},
        {"found": {"a": 3}},
        {"found": []},
    ],
)
def test_data_of_another_shape_are_found_out(spoilt: dict[str, Any]) -> None:
    """Each of them, and the data without the slip are read."""
    assert from_data(Branch, GOOD).pair == ("b", 1.0)
    with pytest.raises((KeyError, TypeError, ValueError, AttributeError)):
        from_data(Branch, {**GOOD, **spoilt})


def test_what_forms_leave_unsaid_is_read_as_the_field_means_it() -> None:
    """Nothing is the empty word; yes and no are truth values, but only where those are meant."""
    assert Leaf("") == from_data(Leaf, {"word": None})
    assert Leaf("no") == from_data(Leaf, {"word": "no"})
    assert not from_data(Branch, {**GOOD, "open": "no"}).open_
    assert Leaf("here", 1.0) == from_data(Leaf, {"number": 1.0}, word="here")


def test_a_kind_that_json_cannot_tell_apart_is_refused() -> None:
    """A choice of two records could be read as either."""
    with pytest.raises(TypeError, match="holds no choice"):
        from_data(Leaf | Branch, {})  # type: ignore[arg-type]


LATE = frozenset({"Conversation", "Fitting", "Gathered", "Knowledge", "Trial", "Book", "BookItem"})
"""Dataclasses that hold what is worked out later or compared by a part only: no struct can."""
ANSWERS = ("advisor/answer/model/", "advisor/answer/stepwhy.py", "advisor/order/steps.py")
"""Where dataclasses are, for the schema of an answer is made of them."""


def test_what_is_held_is_a_struct() -> None:
    """A dataclass takes forty times as long to make as a struct when its module is imported."""
    found = {
        node.name
        for path in sorted(Path("advisor").rglob("*.py"))
        if not path.as_posix().startswith(ANSWERS)
        for node in ast.parse(path.read_text("utf-8")).body
        if isinstance(node, ast.ClassDef)
        and any("dataclass" in ast.unparse(one) for one in node.decorator_list)
    }
    assert found == LATE

"""The vocabulary of conditions: what a rule may ask, and what it is told when it may not."""

from __future__ import annotations

from typing import Any

import pytest

from advisor.knowledge.when import Reader, number_test

FAR = 1e9
Problem = tuple[tuple[Any, ...], str, list[str]]


def reader() -> Reader:
    """A reader of a small vocabulary."""
    return Reader(
        {"pile": ("no", "short", "deep"), "frays": ("no", "a little", "yes")},
        ["silk", "wool"],
        ["organza", "velvet"],
        ["plain", "twill"],
        {"seam.finish": ("pinked", "none"), "seam.kind": ("plain", "French")},
    )


def read(raw: Any, what: str = "layer") -> tuple[list[Any], list[Problem]]:
    """A compiled condition, and the problems met."""
    problems: list[Problem] = []

    def fail(path: tuple[Any, ...], text: str, known: Any) -> None:
        problems.append((path, text, list(known)))

    return getattr(reader(), what)(raw, ("when",), fail), problems


@pytest.mark.parametrize(
    ("text", "expected"),
    [
        ("under 90", (-FAR, 90.0, False, True)),
        ("at most 90", (-FAR, 90.0, False, False)),
        ("over 1.5", (1.5, FAR, True, False)),
        ("at least 300", (300.0, FAR, False, False)),
        ("90 to 150", (90.0, 150.0, False, False)),
        (" 4 ", (4.0, 4.0, False, False)),
        ("at least 90 to 150", None),
        ("about 90", None),
        ("-3", None),
        ("1e9", None),
        ("", None),
        ("nan", None),
    ],
)
def test_a_test_of_a_number(text: str, expected: tuple[float, float, bool, bool] | None) -> None:
    """Under and over leave the end out; anything else than these few forms is no test."""
    assert expected == number_test(text)


@pytest.mark.parametrize(
    ("raw", "expected"),
    [
        ({"pile": "short"}, ["trait", "pile", 1, 1]),
        ({"pile": "at least short"}, ["trait", "pile", 1, 2]),
        ({"frays": "at most a little"}, ["trait", "frays", 0, 1]),
        ({"frays": True}, ["trait", "frays", 2, 2]),
        ({"pile": False}, ["trait", "pile", 0, 0]),
        ({"structure": "knit"}, ["word", "structure", ["knit"]]),
        ({"structure": ["woven", "net"]}, ["word", "structure", ["woven", "net"]]),
        ({"weave": "twill"}, ["word", "weave", ["twill"]]),
        ({"fabric": "velvet"}, ["word", "fabric", ["velvet"]]),
        ({"fibre": "silk"}, ["fibre", ["silk"], "any"]),
        ({"mostly": "wool"}, ["fibre", ["wool"], "mostly"]),
        ({"only": ["silk", "wool"]}, ["fibre", ["silk", "wool"], "only"]),
        ({"fibre group": "protein"}, ["group", ["protein"]]),
        ({"weight": "under 90"}, ["number", "weight", -FAR, 90.0, False, True]),
        ({"weight": 90}, ["number", "weight", 90.0, 90.0, False, False]),
        ({"not": {"fibre": "silk"}}, ["not", ["fibre", ["silk"], "any"]]),
        (
            {"pile": "no", "fibre": "silk"},
            ["all", ["trait", "pile", 0, 0], ["fibre", ["silk"], "any"]],
        ),
        (
            {"any": [{"pile": "no"}, {"fibre": "silk"}]},
            ["any", ["trait", "pile", 0, 0], ["fibre", ["silk"], "any"]],
        ),
        ({"all": [{"pile": "no"}]}, ["all", ["trait", "pile", 0, 0]]),
    ],
)
def test_a_condition_of_a_layer(raw: Any, expected: list[Any]) -> None:
    """Keys side by side all have to hold; any, all and not nest."""
    assert (expected, []) == read(raw)


def test_a_condition_of_a_seam_and_of_the_maker() -> None:
    """Each has its own facts; a finish is an option of the aspect."""
    assert (["word", "finish", ["pinked"]], []) == read({"finish": "pinked"}, "seam")
    four = ["number", "plies", 4.0, FAR, False, False]
    assert (four, []) == read({"plies": "at least 4"}, "seam")
    assert (["word", "machine", ["household"]], []) == read({"machine": "household"}, "maker")


@pytest.mark.parametrize(
    ("what", "raw", "path", "part", "meant"),
    [
        ("layer", {"piel": "short"}, ("piel",), "unknown fact 'piel'", "pile"),
        ("layer", {"pile": "shrot"}, ("pile",), "'shrot' is no level of 'pile'", "short"),
        ("layer", {"pile": "at least shrot"}, ("pile",), "is no level", "short"),
        ("layer", {"fibre": "slik"}, ("fibre",), "'slik' is not known", "silk"),
        ("layer", {"structure": ["woven", "net", "kint"]}, ("structure",), "'kint'", "knit"),
        ("layer", {"weight": "light"}, ("weight",), "is no test of a number", ""),
        ("layer", {"not": {"piel": "no"}}, ("not", "piel"), "unknown fact", "pile"),
        ("layer", {"any": [{"pile": "no"}, {"piel": "no"}]}, ("any", 1, "piel"), "unknown", "pile"),
        ("layer", {"any": {"pile": "no"}}, ("any",), "takes a list", ""),
        ("layer", {"all": []}, ("all",), "takes a list", ""),
        ("layer", {}, (), "a condition is a mapping", ""),
        ("layer", "pile", (), "a condition is a mapping", ""),
        ("seam", {"shap": "curved"}, ("shap",), "unknown fact 'shap' of a seam", "shape"),
        ("seam", {"shape": "curvy"}, ("shape",), "'curvy' is not known", "curved"),
        ("seam", {"plies": "many"}, ("plies",), "is no test of a number", ""),
        ("maker", {"machin": "hand"}, ("machin",), "unknown fact 'machin'", "machine"),
        ("maker", {"machine": "home"}, ("machine",), "'home' is not known", "household"),
    ],
)
def test_a_word_that_is_not_known(
    what: str, raw: Any, path: tuple[Any, ...], part: str, meant: str
) -> None:
    """The place inside the condition is named, and the word that was meant is among those known."""
    _, problems = read(raw, what)
    (found,) = problems
    assert ("when", *path) == found[0]
    assert part in found[1]
    assert not meant or meant in found[2]


def test_all_mistakes_of_a_condition_are_told() -> None:
    """A reader does not stop at the first."""
    _, problems = read({"piel": "short", "fibre": "slik", "weight": "light"})
    assert [("when", "piel"), ("when", "fibre"), ("when", "weight")] == [p[0] for p in problems]

"""One slip in a project is one message, at its place, and the rest of the file is still judged.

Each key of the demos is misspelt, its value is misspelt, of a wrong shape, a bare number, or
missing: once for each way to a key (`ADVISOR_SLIPS=all`: every key of every demo). The file has a
second slip always, in `units`, which has to be found beside.
"""

from __future__ import annotations

import os
import random
from collections.abc import Iterator
from dataclasses import dataclass
from functools import cache
from pathlib import Path
from typing import Any

import pytest
import yaml

from advisor.errors import Exit, InputError, Problem
from advisor.project.load import garment_of
from advisor.textio.yamlfile import parse_yaml
from tests.typed import shipped as knowledge

DEMOS = sorted((Path(__file__).parents[3] / "knowledge" / "examples").glob("*.yaml"))
KINDS = ("key", "value", "shape", "number", "missing")
ALL = os.environ.get("ADVISOR_SLIPS") == "all"
SEED = 14
UNITS = "units: metric", "units: mertic"
OWN_WORDS = {"garment", "name", "colour", "result", "fabric"}
"""What is in her own words, and cannot be misspelt; a fabric may have a word that is left out."""
PLAIN_NUMBERS = {"weight", "shrinks", "shrinks across", "number", "times"}
"""A number alone says enough: g/m2, percent, or how many."""
MAY_BE_EMPTY = {
    "kit", "needles", "pins", "pressing", "maker", "feet", "pieces", "results", "crosses",
    "gathers", "strip",
}  # fmt: skip
"""What may be left out may also stand there with nothing behind it, as in a new project."""
FREE = {"value": OWN_WORDS, "number": PLAIN_NUMBERS, "missing": MAY_BE_EMPTY}


@dataclass(frozen=True)
class Slip:
    """A demo with one slip: the way to the key, the line, and the key as it was."""

    kind: str
    way: tuple[str | int, ...]
    line: int
    text: str
    file: str

    @property
    def key(self) -> str:
        """The last word on the way."""
        return next(str(step) for step in reversed(self.way) if isinstance(step, str))


def _pairs(node: Any, way: tuple[str | int, ...] = ()) -> Iterator[tuple[Any, Any, Any]]:
    if isinstance(node, yaml.MappingNode):
        for key, value in node.value:
            yield (*way, key.value), key, value
            yield from _pairs(value, (*way, key.value))
    elif isinstance(node, yaml.SequenceNode):
        for i, value in enumerate(node.value):
            yield from _pairs(value, (*way, i))


def _misspelt(word: str, rng: random.Random) -> str:
    """A word with two letters changed about; the same where it has none to change."""
    places = [
        i for i in range(1, len(word) - 1) if word[i : i + 2].isalpha() and word[i] != word[i + 1]
    ]
    i = rng.choice(places) if places else 0
    return word[:i] + word[i + 1] + word[i] + word[i + 2 :] if places else word


def _slips(file: Path, rng: random.Random) -> Iterator[Slip]:
    text = file.read_text("utf-8")
    for way, key, value in _pairs(yaml.compose(text, Loader=yaml.SafeLoader)):
        if way[0] == "units":
            continue
        start, end = value.start_mark.index, value.end_mark.index
        end = start + len(text[start:end].rstrip())
        behind = key.end_mark.index
        scalar = isinstance(value, yaml.ScalarNode)
        mark = '"' if scalar and value.style else ""
        own = {
            "key": text[: key.start_mark.index] + _misspelt(key.value, rng) + text[behind:],
            "value": text[:start] + mark + _misspelt(value.value, rng) + mark + text[end:]
            if scalar
            else text,
            "shape": text[:behind] + (": [[7]]" if scalar else ": soup") + text[end:],
            "number": text[:behind] + ": 7" + text[end:],
            "missing": text[:behind] + ": " + text[end:],
        }
        for kind, changed in own.items():
            if changed != text:
                line = key.start_mark.line + 1 if kind == "key" else value.start_mark.line + 1
                yield Slip(kind, way, line, changed.replace(*UNITS), file.name)


@cache
def _chosen(kind: str) -> tuple[Slip, ...]:
    """One slip for each way to a key, places in lists and names of cloths being alike."""
    rng = random.Random(SEED)
    ways: dict[tuple[str, ...], list[Slip]] = {}
    for slip in (s for demo in DEMOS for s in _slips(demo, rng) if s.kind == kind):
        way = tuple("*" if isinstance(step, int) else step for step in slip.way)
        if way[0] == "fabrics":
            way = (*way[:1], "*", *way[2:3], *("*" for _ in way[3:]))
        ways.setdefault(way, []).append(slip)
    return tuple(s for found in ways.values() for s in (found if ALL else [rng.choice(found)]))


def _found(slip: Slip) -> list[Problem]:
    """What is said of a file, less the slip in `units` that has to be found each time."""
    with pytest.raises(InputError) as caught:
        garment_of(parse_yaml(slip.text, slip.file), knowledge())
    assert Exit.USAGE == caught.value.exit
    problems = [str(p) for p in caught.value.problems if "mertic" not in str(p)]
    assert len(problems) + 1 == len(caught.value.problems), (slip.way, problems)
    return [p for p in caught.value.problems if "mertic" not in str(p)]


@pytest.mark.parametrize("kind", KINDS)
def test_one_slip_is_one_message(kind: str) -> None:
    """With line and column, and with what was expected or the nearest word."""
    assert len(_chosen(kind)) > 30
    for slip in _chosen(kind):
        problems = _found(slip)
        free = slip.key in FREE.get(kind, set())
        assert 1 == len(problems) or (free and not problems), (slip.way, [*map(str, problems)])
        for problem in problems:
            where = problem.where
            assert where is not None, slip
            assert None not in (where.line, where.column), slip
            said = ("must be", "has no", "is written here")
            helped = problem.expected or problem.nearest or any(x in problem.message for x in said)
            assert helped, str(problem)


def test_a_misspelt_key_is_shown_where_it_stands_with_the_key_that_was_meant() -> None:
    """Names of cloths apart, which are told where they are used."""
    for slip in _chosen("key"):
        (problem,) = _found(slip)
        if slip.way[0] == "fabrics" and len(slip.way) == 2:
            assert f"is called '{slip.key}'" in problem.message
            continue
        assert slip.key.replace("-", " ") in problem.nearest, str(problem)
        assert problem.where is not None
        assert slip.line == problem.where.line, str(problem)


def test_her_own_word_for_a_key_is_one_message() -> None:
    """A word that nobody would find by its letters is told with the key that it stands for."""
    text = (
        "name: Coat\ncloths:\n  a: cotton poplin\n"
        "places:\n  - {name: side, layers: [a, a], length: 40 cm}\n"
    )
    with pytest.raises(InputError) as caught:
        garment_of(parse_yaml(text, "coat.yaml"), knowledge())
    assert [
        ("unknown key 'name'", ("garment",)),
        ("unknown key 'cloths'", ("fabrics",)),
        ("unknown key 'places'", ("seams",)),
    ] == [(problem.message, problem.nearest) for problem in caught.value.problems]


def test_a_cloth_that_is_not_understood_is_told_once_where_a_part_holds_it() -> None:
    """A part that names what no cloth is called is told all the same."""
    text = (
        "garment: Coat\nfabrics:\n  a: cotton poplin\n  b: silk georgete\n"
        "parts:\n  skirt: {layers: [a, b]}\n  bodice: {layers: [a, c], separate: [b]}\n"
        "seams:\n  - {name: side, layers: [a, b], length: 40 cm}\n"
    )
    with pytest.raises(InputError) as caught:
        garment_of(parse_yaml(text, "coat.yaml"), knowledge())
    first, second = caught.value.problems
    assert first.message.startswith("not understood: 'georgete'")
    assert second.message == "no fabric of this project is called 'c'"


def test_parts_in_another_form_are_told_once_however_many_places_name_them() -> None:
    """That the project names none would be said of each, and is not so."""
    text = (
        "garment: Coat\nfabrics: {a: cotton poplin}\n"
        "parts:\n  - {name: skirt, layers: [a]}\n"
        "seams:\n  - {name: side, layers: [a, a], part: skirt, length: 40 cm}\n"
        "  - {name: seam, layers: [a, a], part: skirt, length: 40 cm}\n"
    )
    with pytest.raises(InputError) as caught:
        garment_of(parse_yaml(text, "coat.yaml"), knowledge())
    (one,) = caught.value.problems
    assert "'parts' must be keys with their values" in one.message.replace("':", "'")


def test_her_own_word_for_a_key_of_a_piece_or_a_place_is_one_message_too() -> None:
    """The key that it stands for is not told to be missing as well."""
    text = (
        "garment: Coat\nfabrics:\n  a: {cloth: cotton poplin, gsm: 120}\n"
        "seams:\n  - {name: side, layers: [a, {fabric: a, fullness: 2}], made: French seam}\n"
        "pieces:\n  - {name: front, of: a, cut: 2, width: 40 cm, length: 60 cm}\n"
    )
    with pytest.raises(InputError) as caught:
        garment_of(parse_yaml(text, "coat.yaml"), knowledge())
    assert [
        ("unknown key 'cloth'", ("fabric",)),
        ("unknown key 'gsm'", ("weight",)),
        ("unknown key 'fabric'", ("use",)),
        ("unknown key 'made'", ("method",)),
        ("unknown key 'of'", ("fabric",)),
        ("unknown key 'cut'", ("number",)),
        ("unknown key 'length'", ("height",)),
    ] == [(problem.message, problem.nearest) for problem in caught.value.problems]


@pytest.mark.parametrize(
    ("lost", "said", "line"),
    [
        ("[household", "a list opened with '['", 1),
        ("{a: [1, 2", "a list opened with '['", 1),
        ("{a: 1, b: 2", "a group opened with '{'", 1),
        ("a: [1, , 2]", "lacks a word", 1),
        ("a: {b:, c: 1}", "needs a space and a word behind it", 1),
        ('a: "never\nb: 1\n', "a quotation mark is opened and never closed", 1),
        ("a: 1\nb: [1,\n  2\nc: 3\n", "a list opened with '['", 2),
    ],
)
def test_what_is_never_closed_is_said_in_plain_words(lost: str, said: str, line: int) -> None:
    """At the line where it was opened, and without the reader's own words."""
    with pytest.raises(InputError) as caught:
        parse_yaml(lost, "mine.yaml")
    (problem,) = caught.value.problems
    assert said in problem.message
    assert problem.where is not None
    assert line == problem.where.line
    assert "node" not in problem.message

"""What published works of good standing say of handling a cloth, run against what is printed.

`works/` holds one file per work: its citation, where it can be opened, and rows in our own words.
A row lists what is asked, and what the answer must hold: the checks of `advice_checks`; `printed`,
whose words must stand in one sentence of what `advisor ask --more` prints; and `screen`, whose
words must stand in one row of what `advisor ask` prints by itself. A row that the advice does not
follow says why in `outside`; a work that is not of good standing says so.
"""

from __future__ import annotations

import re
from functools import cache
from pathlib import Path
from typing import Any

import pytest

from advisor.answer.pipeline import answer as answer_of
from advisor.project.quick import quick_garment
from advisor.render.printed.detailed import render_detailed
from advisor.render.screen.ask import ask_text
from advisor.textio.yamlfile import read_yaml
from tests.published.advice_checks import (
    answer,
    has_words,
    knowledge,
    misses_of,
    unsafe_in_general,
)

FOLDER = Path(__file__).with_name("works")
LEAST_ROWS = 770
LEAST_AGREEING = 0.97
ABOUT = {"layers", "seam", "maker", "at"}


@cache
def works() -> dict[str, dict[str, Any]]:
    return {path.stem: read_yaml(path).data for path in sorted(FOLDER.glob("*.yaml"))}


def rows() -> list[tuple[str, dict[str, Any]]]:
    return [(name, row) for name, work in works().items() for row in work["rows"]]


def checked() -> list[tuple[str, dict[str, Any]]]:
    return [(name, row) for name, row in rows() if "asks" in row]


@cache
def printed_text(layers: tuple[str, ...]) -> tuple[str, ...]:
    """The sentences of what `advisor ask` prints by default, each with the label of its line."""
    told = answer_of(quick_garment(list(layers), knowledge()), knowledge())
    text = render_detailed(told, reasons=True, title="how to handle it")
    paragraphs = re.split(r"\n(?=\s{0,2}\S)", text)
    flat = [re.sub(r"\s+", " ", p).strip() for p in paragraphs]
    return tuple(s for p in flat for s in re.split(r"(?<=\.)\s+", p))


@cache
def screen_rows(layers: tuple[str, ...]) -> tuple[str, ...]:
    """The rows of the screen that `advisor ask` prints by default, each with its label."""
    told = answer_of(quick_garment(list(layers), knowledge()), knowledge())
    rows = re.split(r"\n(?=\s{0,2}\S)", ask_text(told))
    return tuple(re.sub(r"\s+", " ", row).strip() for row in rows)


def screen_misses(ask: dict[str, Any]) -> list[str]:
    lines = list(screen_rows(tuple(ask["layers"])))
    return [f"not on the screen: '{w}'" for w in ask.get("screen", []) if not has_words(lines, w)]


def printed_misses(ask: dict[str, Any]) -> list[str]:
    lines = list(printed_text(tuple(ask["layers"])))
    return [f"not printed: '{w}'" for w in ask.get("printed", []) if not has_words(lines, w)]


def row_misses(row: dict[str, Any]) -> list[str]:
    """What the answers to all the questions of a row lack."""
    misses = []
    for ask in row["asks"]:
        rest = {part: value for part, value in ask.items() if part not in ("printed", "screen")}
        found = answer(rest)
        misses += misses_of(rest, found) + printed_misses(ask) + screen_misses(ask)
        misses += unsafe_in_general(found)
    return misses


@pytest.mark.parametrize("name", works(), ids=list(works()))
def test_a_work_can_be_opened(name: str) -> None:
    """A work names who published it, what it is called, and where it can be opened."""
    work = works()[name]
    assert {"title", "by", "where", "kind", "rows"} <= set(work), name
    assert work["kind"] in ("extension", "trade body", "handbook", "newspaper", "retailer")


def test_there_are_rows_enough() -> None:
    """The rows only grow; each has an id of its own and asserts something, or says why not."""
    ids = [f"{name} {row['id']}" for name, row in rows()]
    assert len(ids) == len(set(ids))
    assert len(ids) >= LEAST_ROWS
    for name, row in rows():
        assert ("asks" in row) != ("outside" in row), f"{name} {row['id']}"
        assert row["says"]
        for ask in row.get("asks", []):
            assert set(ask) - ABOUT, f"{name} {row['id']} asserts nothing"


def test_few_rows_are_outside() -> None:
    """At most three rows in a hundred are not followed."""
    assert len(checked()) >= LEAST_AGREEING * len(rows())


@pytest.mark.parametrize(("name", "row"), checked(), ids=[f"{n}-{r['id']}" for n, r in checked()])
def test_the_advice_says_so_too(name: str, row: dict[str, Any]) -> None:
    """What the work says, the answer says, and nothing in that answer does harm."""
    assert [] == row_misses(row), f"{works()[name]['title']}: {row['says']}"

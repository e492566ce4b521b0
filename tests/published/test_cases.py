"""Handbook rows about special cloths and combinations, run against the real advice.

`cases.yaml` holds 150 rows in our own words: what a published source tells a maker to do with a
cloth or a combination, and how that can be looked up in the answer. A row agrees when every one
of its checks does; a row that the tool does not answer counts against it.
The checks are those of `advice_checks`.
"""

from __future__ import annotations

import sys
from collections import Counter
from functools import cache
from pathlib import Path
from typing import Any

import pytest

from advisor.textio.yamlfile import read_yaml
from tests.published.advice_checks import (
    Answer,
    answer,
    knowledge,
    misses_of,
    unsafe_by_row,
    unsafe_in_general,
)

FILE = Path(__file__).with_name("cases.yaml")
STRENGTHS = {"strong": 77, "weak": 64, "derived": 5, "memory": 4}
NEEDED = {"strong": 0.95, "weak": 0.80}


@cache
def rows() -> tuple[dict[str, Any], ...]:
    return tuple(read_yaml(FILE).data)


@cache
def answers(id_: str) -> tuple[tuple[dict[str, Any], Answer], ...]:
    row = next(r for r in rows() if r["id"] == id_)
    return tuple((ask, answer(ask)) for ask in row.get("asks", []))


@cache
def judged() -> tuple[tuple[str, str, tuple[str, ...]], ...]:
    """Each row that belongs here with its misses: id, strength, reasons."""
    result: list[tuple[str, str, tuple[str, ...]]] = []
    for row in rows():
        if "belongs to" in row:
            continue
        if "outside" in row:
            result.append((row["id"], row["strength"], (f"outside: {row['outside']}",)))
            continue
        found = [m for ask, reply in answers(row["id"]) for m in misses_of(ask, reply)]
        result.append((row["id"], row["strength"], tuple(found)))
    return tuple(result)


def agreement(strength: str) -> tuple[int, int, list[str]]:
    here = [(id_, misses) for id_, kind, misses in judged() if kind == strength]
    missed = [f"{id_}: {'; '.join(misses)}" for id_, misses in here if misses]
    return len(here) - len(missed), len(here), missed


def test_all_rows_are_there() -> None:
    """The file holds the 150 rows by their strengths, each with a known source and a check."""
    assert Counter(STRENGTHS) == Counter(row["strength"] for row in rows())
    assert 150 == len({row["id"] for row in rows()})
    for row in rows():
        assert row["sources"], row["id"]
        for source in row["sources"]:
            assert source.split(" ", 1)[0] in knowledge().sources, f"{row['id']}: {source}"
        ways = [key for key in ("asks", "outside", "belongs to") if row.get(key)]
        assert 1 == len(ways), f"{row['id']}: {ways}"
        for ask in row.get("asks", []):
            assert set(ask) - {"layers", "seam", "maker", "at"}, f"{row['id']} asserts nothing"


@pytest.mark.parametrize("strength", list(STRENGTHS))
def test_agreement(strength: str, capsys: pytest.CaptureFixture[str]) -> None:
    """The advice agrees with the published rows: strong ones 95 in 100, weak ones 80."""
    good, total, missed = agreement(strength)
    text = f"{strength} rows: {good} of {total} agree ({good / total:.1%})"
    with capsys.disabled():
        sys.stdout.write("\n".join(["", text, *(f"  miss {line}" for line in missed), ""]))
    assert good >= NEEDED.get(strength, 0.5) * total, "\n".join([text, *missed])


@pytest.mark.parametrize("id_", [row["id"] for row in rows() if row.get("asks")])
def test_no_row_is_unsafe(id_: str) -> None:
    """No row, whether it agrees or not, gets advice that harms the cloth or the maker."""
    harm = [
        h
        for ask, found in answers(id_)
        for h in (*unsafe_in_general(found), *unsafe_by_row(ask, found))
    ]
    assert [] == harm

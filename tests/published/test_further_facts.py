"""Further facts of handbooks, extension cards, manuals and guides, run against the real advice.

`further_facts.yaml` holds them in our own words, apart from the 150 rows of `cases.yaml`. A fact
agrees when every one of its checks does; the checks are those of `advice_checks`. A fact that the
advice does not follow says why (`outside`), and no more than one in twenty may.
"""

from __future__ import annotations

from functools import cache
from pathlib import Path
from typing import Any

import pytest

from advisor.textio.yamlfile import read_yaml
from tests.published.advice_checks import answer, knowledge, misses_of, unsafe_in_general

FILE = Path(__file__).with_name("further_facts.yaml")
ABOUT = {"layers", "seam", "maker", "at"}


@cache
def facts() -> tuple[dict[str, Any], ...]:
    return tuple(read_yaml(FILE).data)


def checked() -> list[dict[str, Any]]:
    return [fact for fact in facts() if "asks" in fact]


def test_there_are_a_hundred_facts_and_more() -> None:
    """Each fact has an id of its own, a known source and something that is checked."""
    assert 100 <= len(facts()) == len({fact["id"] for fact in facts()})
    for fact in facts():
        for source in fact["sources"]:
            assert source.split(" ", 1)[0] in knowledge().sources, f"{fact['id']}: {source}"
        assert ("asks" in fact) != ("outside" in fact), fact["id"]
        for ask in fact.get("asks", []):
            assert set(ask) - ABOUT, f"{fact['id']} asserts nothing"


def test_few_facts_are_outside() -> None:
    """At most one fact in twenty is not followed, and a hundred at least are."""
    outside = [fact["id"] for fact in facts() if "outside" in fact]
    assert len(outside) <= len(facts()) / 20, outside
    assert len(facts()) - len(outside) >= 100


def test_the_facts_are_not_those_of_the_cases() -> None:
    """No fact repeats a row of the cases: same layers, same checks."""
    cases = read_yaml(FILE.with_name("cases.yaml")).data
    known = [ask for row in cases for ask in row.get("asks", [])]
    assert [] == [fact["id"] for fact in checked() for ask in fact["asks"] if ask in known]


@pytest.mark.parametrize("fact", checked(), ids=[fact["id"] for fact in checked()])
def test_the_advice_agrees(fact: dict[str, Any]) -> None:
    """What the source says is what the advice says, and nothing in that advice does harm."""
    for ask in fact["asks"]:
        found = answer(ask)
        assert [] == misses_of(ask, found), f"{fact['sources']}: {fact['says']}"
        assert [] == unsafe_in_general(found)

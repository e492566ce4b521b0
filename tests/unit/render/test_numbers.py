"""Marks of sources: what was only remembered has a star, whatever kind of work it is."""

from __future__ import annotations

from dataclasses import replace

import pytest

from advisor.answer.teller import told_source
from advisor.render.printed.numbers import Numbers
from tests.garments.whole import FILES, known, told

CITED = ("kadolph-textiles", "memory", "common-practice", "threads-92", "iec-61966-2-1")


def numbers() -> Numbers:
    """The marks of a sheet that cites a few works."""
    sources = tuple(told_source(id_, known()) for id_ in CITED)
    return Numbers(replace(told(FILES[0]), sources=sources), most=2, short=True)


@pytest.mark.parametrize(
    ("sources", "star"),
    [
        (["kadolph-textiles p. 4"], True),
        (["iec-61966-2-1"], True),
        (["memory", "kadolph-textiles"], True),
        (["threads-92", "kadolph-textiles"], False),
        (["common-practice"], False),
    ],
)
def test_a_work_that_is_only_remembered_has_a_star(sources: list[str], star: bool) -> None:
    """A handbook or a standard of which no text was seen is no better than memory."""
    assert star == ("*" in numbers().mark(sources))


def test_of_many_sources_those_that_were_seen_are_named() -> None:
    """A standard from memory goes behind a handbook that was read and a fact of the trade."""
    marks = numbers()
    found = marks.mark(["iec-61966-2-1", "common-practice", "threads-92"])
    assert found == "[c,1]"
    assert marks.entries()[0][1] == "threads-92"

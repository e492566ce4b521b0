"""A sheet that is too long leaves out what matters least, and never a danger or a setting."""

from __future__ import annotations

from functools import cache
from pathlib import Path

import pytest

from advisor.answer.model.answer import Answer
from advisor.answer.pipeline import WHOLE, answer
from advisor.project.load import load_project
from advisor.render.lines import SEAM_LINES
from advisor.render.printed.blocks import TIGHTEST, Room, sections
from advisor.render.printed.compact import LINES, fitted_lines, lines_in
from advisor.render.printed.digest import digest
from advisor.render.printed.numbers import Numbers
from advisor.render.printed.section import Section
from tests.typed import shipped

EXAMPLES = Path(__file__).parents[3] / "knowledge" / "examples"
COAT, JACKET = (EXAMPLES / f"{name}.yaml" for name in ("lantern-parade-coat", "bandstand-jacket"))
SETTINGS = {label for label, _ in SEAM_LINES}
every_step = pytest.mark.parametrize("tight", range(1, TIGHTEST + 1))


@cache
def report(demo: Path = COAT) -> Answer:
    known = shipped()
    return answer(load_project(demo, known), known, WHOLE)


def sheet(tight: int) -> dict[str, Section]:
    numbers = Numbers(report(), most=2, short=True)
    return {s.id: s for s in sections(report(), numbers, digest(report()), Room(tight))}


@every_step
def test_no_danger_is_left_out(tight: int) -> None:
    """Clashes, what to do instead, cautions, tests and unknowns stay, however tight it gets."""
    for name in ("conflicts", "cautions", "tests", "unknowns"):
        loose = [(i.lead, [p.text for p in i.parts]) for i in sheet(0)[name].items]
        assert loose
        assert loose == [(i.lead, [p.text for p in i.parts]) for i in sheet(tight)[name].items]


def test_what_spoils_a_cloth_goes_before_what_the_last_press_says_too() -> None:
    """The line of the last press names what keeps its iron; of layers near a hot seam none does."""
    told = [part.text for item in sheet(TIGHTEST)["garment"].items for part in item.parts]
    assert any("are in when" in text for text in told)
    assert any(text.startswith("iron part by part") for text in told)


@every_step
def test_no_setting_of_a_seam_is_left_out(tight: int) -> None:
    """Every pin, needle, seam and press stays."""

    def settings(found: dict[str, Section]) -> list[tuple[str, str, str, str]]:
        return [
            (item.lead, part.label, part.text, part.same)
            for item in found["seams"].items
            for part in item.parts
            if part.label in SETTINGS
        ]

    assert settings(sheet(0))
    assert settings(sheet(0)) == settings(sheet(tight))


def test_what_is_left_out_is_counted() -> None:
    """The tightest sheet says that more is left out than the loosest does."""
    counts = [int(sheet(t)["unknowns"].close.split()[0]) for t in range(TIGHTEST + 1)]
    assert sorted(counts) == counts
    assert counts[0] < counts[-1]


def test_what_is_not_on_the_list_is_named_beneath_it() -> None:
    """Nobody takes the cloth alone for all that there is to buy."""
    whole, short = sheet(0)["shopping"], sheet(TIGHTEST)["shopping"]
    assert len(whole.items) > len(short.items) == 1
    for lead in {"thread", "notions"} & {item.lead for item in whole.items[1:]}:
        assert lead in short.close.casefold()


def test_it_is_no_tighter_than_it_has_to_be() -> None:
    """With room for all nothing is left out; with room for nothing the tightest is printed.

    The jacket fits two pages whole, so that lines alone count.
    """
    loose, none = fitted_lines(report(JACKET), 10_000)
    tight, most = fitted_lines(report(JACKET), 1)
    assert (Room(), Room(TIGHTEST)) == (none, most)
    assert len(tight) < len(loose)
    between, room = fitted_lines(report(JACKET), len(loose) - 1)
    assert 0 < room.step <= TIGHTEST
    assert len(between) < len(loose)


def test_a_line_too_many_costs_no_more_than_it_has_to() -> None:
    """One thing to do more than is told would not fit: the sheet is filled to its last lines."""
    numbers, most = Numbers(report(), most=2, short=True), LINES["metric"]
    lines, room = fitted_lines(report(), most)
    assert room.step
    fuller = Room(room.step, room.spare + 1)
    told = sections(report(), numbers, digest(report()), fuller)
    if told != sections(report(), numbers, digest(report()), room):
        assert len(lines) <= most
        assert lines_in(report(), digest(report()), room, most)[1]
        assert not lines_in(report(), digest(report()), fuller, most)[1]

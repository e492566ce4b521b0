"""How much paper a sheet takes: more words never take less, and smaller type never more."""

from __future__ import annotations

from hypothesis import given
from hypothesis import strategies as st

from advisor.render.printed.pagefit import SIZES, Amount, Paper, fits, lines_on
from advisor.render.printed.section import Item, Part, Section
from advisor.units import System

KINDS = ("conflicts", "cautions", "seams", "tests")
words = st.text("abcdefg ", max_size=400)
parts = st.builds(Part, words, st.sampled_from(("", "pin", "press", "made")))
items = st.builds(Item, words, words, st.lists(parts, max_size=5).map(tuple))
sections = st.builds(
    Section, st.sampled_from(KINDS), st.just("A heading"), st.lists(items, max_size=6).map(tuple)
)
paper = st.sampled_from(("metric", "us"))


def amount(found: list[Section], units: System) -> Amount:
    """What has to stand there, with a source and three layers under the iron."""
    return Amount(found, [("1", "a-handbook", "")], True, 3, units)


@given(st.lists(sections, max_size=8), sections, paper)
def test_a_section_more_never_takes_less(
    found: list[Section], more: Section, units: System
) -> None:
    """Nor does the picture of the heat."""
    at = Paper(units, SIZES["large"])
    few = lines_on(at, amount(found, units))
    assert few < lines_on(at, amount([*found, more], units))
    assert few < lines_on(at, amount(found, units), heat=True)


@given(st.lists(sections, max_size=60), paper)
def test_what_fits_in_large_type_fits_in_smaller(found: list[Section], units: System) -> None:
    """So the first size that fits is the largest."""
    fit = [fits(amount(found, units), points) for points in sorted(SIZES.values(), reverse=True)]
    assert fit == sorted(fit)


def test_a_word_more_than_a_line_holds_takes_another() -> None:
    """A column of A4 holds some seventy letters of 8 point."""
    at = Paper("metric", 8.0)
    assert 1 == at.lines(70, at.half)
    assert 2 == at.lines(80, at.half)
    assert 0 == at.lines(0, at.half)

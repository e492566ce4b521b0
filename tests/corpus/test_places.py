"""Every source can be found again by somebody else."""

from __future__ import annotations

from pathlib import Path

import pytest

from tests.corpus import audit, places

LEAST_WITH_PLACE = 0.955
"""Share of the works that must have a place; it only rises."""


def test_every_source_says_where_it_is_or_why_not() -> None:
    """A source names a place, or says why it has none; never both and never neither."""
    assert "" == audit.report(places.without_place())


def test_places_are_well_formed() -> None:
    """Every ISBN has its check digit, every DOI its prefix, every address a host."""
    assert "" == audit.report(places.malformed())


def test_nearly_every_work_can_be_opened() -> None:
    """At least the reached share of the works has a place."""
    found = set(places.with_place())
    missing = [i for i in places.works() if i not in found]
    assert 1 - len(missing) / len(places.works()) >= LEAST_WITH_PLACE, missing


def test_no_place_is_a_copy_of_a_book_that_somebody_put_up() -> None:
    """A book is found in print, by its title or number, and not where whole books are copied."""
    assert "" == audit.report(places.copies())


@pytest.mark.parametrize(
    ("number", "holds"),
    [("978-1-78067-230-4", True), ("0-87349-643-4", True), ("0-87349-643-5", False), ("12", False)],
)
def test_check_digit(number: str, holds: bool) -> None:
    """The check digit of an ISBN is worked out as ISO 2108 says."""
    assert holds is places.isbn_holds(number)


def test_no_place_is_on_this_machine(checkout: Path) -> None:
    """No place is a path of somebody's computer."""
    text = (checkout / "knowledge" / "sources.yaml").read_text(encoding="utf-8")
    assert "file://" not in text

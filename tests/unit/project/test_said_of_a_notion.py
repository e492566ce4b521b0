"""A fibre said of a notion counts as one said of a cloth: it fixes what is sold pure on a word."""

from __future__ import annotations

import pytest

from advisor.project.cloths import read_notion
from advisor.project.phrase import read_phrase
from tests.typed import shipped

PURE = [
    ("cotton stay tape", {"cotton": 100.0}),
    ("cotton tape", {"cotton": 100.0}),
    ("polyester stay tape", {"polyester": 100.0}),
    ("silk stay tape", {"silk": 100.0}),
    ("100% cotton stay tape", {"cotton": 100.0}),
    ("cotton boning channel", {"cotton": 100.0}),
]


@pytest.mark.parametrize(("said", "fibres"), PURE)
def test_a_fibre_said_of_a_notion_fixes_it(said: str, fibres: dict[str, float]) -> None:
    """By its name, or as a word beside it."""
    assert [fibres] == [dict(mix) for mix in read_notion(said, shipped()).mixes]


@pytest.mark.parametrize("said", ["stay tape", "twill tape", "seam tape"])
def test_a_notion_of_which_no_fibre_is_said_may_be_any(said: str) -> None:
    """Else the tenderest that it is sold in would not be feared."""
    entry = shipped().entries["stay-tape"]
    assert entry.mixes == read_notion(said, shipped()).mixes


@pytest.mark.parametrize("share", ["80 % wool 20 % acrylic", "wool 80 % acrylic 20 %"])
def test_a_fibre_with_a_share_is_no_coat(share: str) -> None:
    """An acrylic coating lies on a cloth, but not one of which a fifth is acrylic."""
    found = read_phrase(f"{share} coating", shipped())
    assert ("coating", {"wool": 80.0, "acrylic": 20.0}) == (found.entry, dict(found.mixes[0]))
    assert found.laid == ()

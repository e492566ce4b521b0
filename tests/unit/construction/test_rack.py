"""A reel of the maker's own rack for a cloth."""

from __future__ import annotations

import pytest

from advisor.answer.making import told_shopping
from advisor.answer.teller import Teller
from advisor.construction.rack import from_rack, reel_of
from advisor.craft.colour import Lab, matches
from tests.unit.construction.build_cases import judged, known


def test_a_reel_is_written_with_its_colour() -> None:
    """A code or measured figures behind its name; a word alone cannot be matched."""
    assert ("navy", pytest.approx(11.2, abs=0.1)) == (
        reel_of("navy #1a1f33")[0],  # type: ignore[index]
        reel_of("navy #1a1f33")[1].lightness - 1.05,  # type: ignore[index]
    )
    assert ("old gold", Lab(61.3, 3.7, -5.4)) == reel_of("old gold 61.3 3.7 -5.4")
    assert reel_of("some red") is None


def test_slightly_darker_goes_before_lighter() -> None:
    """Of two reels as far away the darker is named first; an unseen one before both."""
    cloth = Lab(50, 0, 0)
    reels = [("lighter", Lab(51.5, 0, 0)), ("darker", Lab(48, 0, 0)), ("same", Lab(50.2, 0, 0))]
    found = matches(cloth, reels)
    assert ["same", "darker", "lighter"] == [match.name for match in found]
    assert ("nobody sees the difference", "a trained eye sees it") == (found[0].seen, found[1].seen)


def test_what_is_far_away_is_no_match() -> None:
    """Red is offered for no blue cloth, and nothing for a colour that is only a word."""
    assert () == from_rack("#27455f", ("red #c01020",))
    assert () == from_rack("navy", ("navy #27455f",))
    assert ["mine"] == [match.name for match in from_rack("#27455f", ("mine #26445e",))]


def test_the_shopping_list_names_the_reel_that_she_has() -> None:
    """Its difference and what an eye sees of it, from the kit of the project."""
    head = (
        "garment: Blue\nfabrics:\n"
        '  c: {fabric: lawn, fibres: {cotton: 100}, colour: "#27455f"}\nseams:\n'
    )
    kit = 'kit: {threads: ["midnight #223f58", "red #c01020"]}'
    judgement = judged(f"  - {{name: side, layers: [c, c], length: 1 m}}\n{kit}", head)
    bought = told_shopping(judgement, Teller(judgement.garment, known()))
    ((reel,),) = [row.rack for row in bought.thread]
    assert ("midnight", True) == (reel.name, reel.darker)
    assert 0 < reel.difference < 4
    assert "sharma-2005" in reel.sources

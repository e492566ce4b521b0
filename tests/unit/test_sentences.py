"""Quantities inside sentences: written once as values, read in the reader's units."""

from __future__ import annotations

import pytest

from advisor.units.sentences import UNITS, faults, render, said

READ = (
    ("Gather {20 cm}: {20 cm} ÷ what is left.", "20 cm: 20 cm ÷", "8 in: 8 in ÷"),
    ("About {7 mm}; a plain seam up to {15 mm}.", "7 mm; a plain seam up to 15 mm", "1/4 in; a"),
    ("Up to {15 mm}.", "to 15 mm.", "to 5/8 in."),
    (
        "Melts near {200 °C}, softens at {170 to 180 °C}.",
        "at 170 to 180 °C",
        "near 390 °F, softens",
    ),
    ("Softens at {170 to 180 °C}.", "at 170 to 180 °C", "at 340 to 355 °F"),
    ("At {40 °C}.", "At 40 °C", "At 104 °F"),
    ("Keep {3 to 4 mm} off.", "3 to 4 mm off", "1/8 to 3/16 in off"),
    ("Strips of {32 mm}.", "32 mm", "1 1/4 in"),
    ("Yards of {36 in} cloth.", "91 cm", "36 in"),
    ("Skin of {0.4 mm}.", "0.4 mm", "0.02 in"),
    ("From {120 g/m2} on.", "120 g/m²", "3.5 oz/yd²"),
    ("Between {100 and 200 g/m2}.", "100 and 200 g/m²", "2.9 and 5.9 oz/yd²"),
    ("A zigzag {2.5 mm stitch} wide.", "2.5 mm wide", "2.5 mm wide"),
    ("At {10 to 12 per inch}.", "At 2.1 to 2.5 mm.", "At 10 to 12 to the inch."),
    ("A {80 NM}.", "A 80.", "A 80 (US 12)."),
    ("{65 to 75 NM}.", "65 to 75.", "65 to 75 (US 9 to 11)."),
    ("Press {needy} first, {place}.", "{needy} first, {place}", "{needy} first, {place}"),
)


@pytest.mark.parametrize(("sentence", "metric", "us"), READ)
def test_a_quantity_is_read_in_the_readers_units(sentence: str, metric: str, us: str) -> None:
    """Ranges keep their joint, inches are fractions, °F go by five or, of water, by one."""
    assert metric in render(sentence, "metric")
    assert us in render(sentence, "us")


def test_no_brace_of_a_quantity_is_left() -> None:
    """Whatever the unit, both readers get a finished sentence."""
    for unit in UNITS:
        for text in (f"x {{2 {unit}}} y", f"x {{2 to 3 {unit}}} y"):
            assert "{" not in render(text, "metric") + render(text, "us")


def test_two_ends_that_read_alike_are_said_once() -> None:
    """A range too narrow for the tape is one mark on it."""
    assert "2 in" == render("{50 to 52 mm}", "us")


def test_a_sentence_of_ours_says_its_quantities_the_same_way() -> None:
    """Whether written in a file or made in a program."""
    assert "8 in" == said(20, "cm", "us")
    assert "20 cm" == said(20, "cm", "metric")


WRONG = ("{20 cmm}", "{20}", "{20 to cm}", "{30 to 20 cm}", "{1/4 in}")


@pytest.mark.parametrize("sentence", WRONG)
def test_a_brace_that_is_no_quantity_is_refused(sentence: str) -> None:
    """It would be printed as it stands."""
    with pytest.raises(ValueError, match=r"quantity|unit|rise"):
        render(sentence, "metric")
    assert 1 == len(list(faults(sentence)))


BARE = (
    ("Trim to 6 mm.", "6 mm", "{6 mm}"),
    ("At 110 degrees it melts.", "110 degrees", "{110 °C}"),
    ("At 170 to 180 °C.", "170 to 180 °C", "{170 to 180 °C}"),
    ("Sew 12 to the inch.", "12 to the inch", "{12 per inch}"),
    ("Above 380 g/m².", "380 g/m²", "{380 g/m2}"),
)


@pytest.mark.parametrize(("sentence", "word", "right"), BARE)
def test_a_bare_quantity_is_told_with_how_it_is_written(
    sentence: str, word: str, right: str
) -> None:
    """The unit stands in the sentence, so it could be read in no other."""
    ((found, text),) = faults(sentence)
    assert word == found
    assert right in text


def test_a_number_that_can_only_mean_the_unit_may_not_stand_alone() -> None:
    """In a claim on needles a number is a needle; what counts something is none."""
    assert [("80", "'80' has no unit: write {80 NM} or what it counts")] == list(
        faults("An 80 for poplin.", "NM")
    )
    assert [] == list(faults("An {80 NM}; 15 to 20 per cent more, two times.", "NM"))
    assert [] == list(faults("An 80 for poplin."))


FREE = (
    "Tex 70 or so, ticket 120.",
    "3 % of 50 launderings",
    "10 minutes",
    "cut 3 times",
    "ISO 4915",
)


@pytest.mark.parametrize("sentence", FREE)
def test_what_is_the_same_in_all_units_stands_as_it_is(sentence: str) -> None:
    """Shares, times and counts need no braces."""
    assert [] == list(faults(sentence))
    assert sentence == render(sentence, "us")

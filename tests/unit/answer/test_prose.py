"""Sentences of the knowledge in the maker's units."""

from __future__ import annotations

import pytest

from advisor.answer.prose import us_text

SENTENCES = (
    ("Stitch 20 cm each way up.", "Stitch 8 in each way up."),
    (
        "Together at 10 mm, trim to 3 mm, press, and stitch at 6 mm.",
        "Together at 3/8 in, trim to 1/8 in, press, and stitch at 1/4 in.",
    ),
    ("Cut it 3 to 4 mm smaller.", "Cut it 1/8 to 3/16 in smaller."),
    ("It wants 130 °C and is at 73 to 104 °C.", "It wants 266 °F and is at 163 to 219 °F."),
)
KEPT = (
    "2 to 2.5 mm; on the bias a zigzag 2 mm long.",
    "Sew two rows of 3 to 5 mm stitches.",
    "Measure a square of 10 cm; each millimetre lost is 1 %.",
)


@pytest.mark.parametrize(("metric", "expected"), SENTENCES)
def test_lengths_and_heat_are_told_in_inches_and_fahrenheit(metric: str, expected: str) -> None:
    """What is measured at the table or on the iron is told in the units of the tape."""
    assert expected == us_text(metric)


@pytest.mark.parametrize("text", KEPT)
def test_stitches_and_shares_stay_metric(text: str) -> None:
    """Machines are marked in mm, and a share counted in mm comes out in no other unit."""
    assert text == us_text(text)

"""What a quantity is refused for, in words: each way to go wrong has a sentence of its own."""

from __future__ import annotations

import math

import pytest

from advisor.units import parse
from advisor.units.factors import us_size
from advisor.units.reading import LARGEST, LONGEST_TEXT

REFUSED = [
    ("length", True, "'true' is not a length: this is not a quantity"),
    ("length", False, "'false' is not a length: this is not a quantity"),
    ("length", None, "'nothing' is not a length: this is not a quantity"),
    ("length", [3], "'a list' is not a length: this is not a quantity"),
    ("length", "", "'' is not a length: it is empty"),
    ("length", "wide", "'wide' is not a length: there is no number in it"),
    (
        "length",
        "about 3 cm",
        "'about 3 cm' is not a length: there is text on both sides of the number",
    ),
    ("length", "3 ells", "'3 ells' is not a length: the unit 'ells' is not known here"),
    ("length", "1,234 mm", "the comma may mean a decimal or thousands; use a point, or none"),
    ("length", "1/2 cm", "a fraction is read only with in, yd, Nm or Ne"),
    ("length", "1/0 in", "a fraction cannot be over 0"),
    ("length", "1 2/2 in", "the fraction after a whole number must be less than 1"),
    ("length", -1, "'-1' is not a length: it is below 0"),
    ("length", 10**400, "'a very large number' is not a length: the number is too large"),
    ("length", 1e18, "'a very large number' is not a length: the number is too large"),
    ("length", 1e17, "'1e+17' is not a length: the number is too large"),
    ("length", math.inf, "'inf' is not a length: it is not a finite number"),
    ("length", "1" * (LONGEST_TEXT + 1), "the text is far too long"),
    ("weight", 0, "'0' is not a weight: it must be more than 0"),
    ("tex", "ticket 0", "'ticket 0' is not a thread size: it must not be 0"),
    ("needle", 5, "'5' is not a needle: it must be at least 26"),
    ("needle", "70/12", "70 and 12 are not the same needle"),
]


@pytest.mark.parametrize(("kind", "value", "said"), REFUSED, ids=lambda v: str(v)[:24])
def test_what_is_no_quantity_is_refused_with_its_reason(
    kind: str, value: object, said: str
) -> None:
    """The reason stands before what would be understood, and nothing else between."""
    with pytest.raises(ValueError, match=": ") as caught:
        parse(kind, value)
    reason, _, instead = str(caught.value).partition("; write ")
    assert reason.endswith(said)
    assert ", as in" in instead


def test_what_is_just_within_is_read() -> None:
    """The largest number, the longest text, and a nought without its sign."""
    assert LARGEST == parse("length", LARGEST)
    assert 5.0 == parse("length", f"5{'mm':>{LONGEST_TEXT - 1}}")
    assert 1.0 == math.copysign(1.0, parse("temperature", "-0 °C"))


def test_a_needle_between_two_sizes_has_no_us_number() -> None:
    """80 is a size 12; 80.5 is none."""
    assert 12 == us_size(80)
    assert us_size(80.5) is None


def test_an_unknown_kind_of_quantity_lists_those_there_are() -> None:
    """Parted by commas, so that they can be read."""
    with pytest.raises(ValueError, match="known: length, weight, temperature, "):
        parse("colour", 3)

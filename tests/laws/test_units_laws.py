from __future__ import annotations

import contextlib
import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from advisor.units import fahrenheit, parse, show, show_range
from advisor.units.factors import NM_US, nm_from_us, us_size
from advisor.units.reading import KINDS

numbers = st.floats(0.001, 10_000).map(lambda number: round(number, 4)).filter(bool)
systems = st.sampled_from(["metric", "us"])


@given(numbers)
def test_inches_are_25_4_millimetres(x: float) -> None:
    """A length in inches is exactly 25.4 times as many millimetres."""
    assert x * 25.4 == parse("length", f"{x} in") == parse("length", x, "in")


@given(st.integers(0, 500), st.integers(1, 15))
def test_a_mixed_fraction_is_its_sum(whole: int, top: int) -> None:
    """Whole inches and sixteenths add up."""
    text = f"{whole} {top}/16 in"
    assert parse("length", text) == pytest.approx((whole + top / 16) * 25.4, rel=1e-12)


@given(numbers)
def test_a_decimal_comma_is_a_decimal_point(x: float) -> None:
    """A comma reads as a point wherever it cannot mean thousands."""
    text = f"{x:.2f}"
    assert parse("length", f"{text} cm") == parse("length", f"{text.replace('.', ',')} cm")


@given(numbers)
def test_reciprocal_units_undo_themselves(x: float) -> None:
    """Stitches per inch and tickets invert: reading the result as a count gives the count back."""
    assert parse("stitch length", f"{25.4 / x} spi") == pytest.approx(x, rel=1e-9)
    assert parse("tex", f"ticket {3000 / x}") == pytest.approx(x, rel=1e-9)


@given(st.floats(-200, 1000))
def test_degrees_go_there_and_back(celsius: float) -> None:
    """Degrees Celsius written as Fahrenheit read back as the same heat."""
    back = parse("temperature", f"{fahrenheit(celsius)} F")
    assert back == pytest.approx(celsius, rel=1e-9, abs=1e-9)


# Half of the coarsest step that is printed at this size, in base units.
def _half_step(kind: str, system: str, value: float) -> float:
    us = {
        "length": 25.4 / 32,
        "weight": 33.9058 / 20,
        "temperature": 5 / 18,
        # One stitch to the inch more or less, at this length; tenths of one under 5 to the inch.
        "stitch length": value * value / 25.4 / (2 if value < 5.3 else 20) * 1.2,
    }
    metric = {
        "length": 0.005 if value < 1 else 0.05 if value < 10 else 0.5 if value < 1000 else 5,
        "weight": 0.05 if value < 10 else 0.5,
        "temperature": 0.5,
        "stitch length": 0.05,
        "tex": 0.05,
        "percent": 0.05,
        "count": 0.005,
        "time": 0.05 if value < 10 else 0.5 if value < 120 else 3 if value < 7200 else 180,
    }
    return us[kind] if system == "us" and kind in us else metric[kind]


@given(st.sampled_from([kind for kind in KINDS if kind != "needle"]), systems, st.data())
def test_what_is_printed_reads_back_within_the_print(
    kind: str, system: str, data: st.DataObject
) -> None:
    """Printed text is accepted input, and differs by no more than half the step printed."""
    high = 25.0 if kind == "stitch length" else 20_000.0
    value = data.draw(st.floats(0.2 if kind == "stitch length" else 1.0, high))
    back = parse(kind, show(kind, value, system))  # type: ignore[arg-type]
    assert abs(back - value) <= _half_step(kind, system, value) * 1.0001


@given(st.sampled_from(sorted(NM_US)))
def test_needle_labels_go_there_and_back(nm: int) -> None:
    """Every needle in the table is found again by its label and by its printed text."""
    label = us_size(nm)
    assert label is not None
    assert nm == nm_from_us(label) == parse("needle", f"{nm}/{label}")


@given(st.sampled_from(["length", "weight", "tex", "time"]), systems, numbers, numbers)
def test_bigger_never_prints_smaller(kind: str, system: str, a: float, b: float) -> None:
    """Rounding keeps order: what is printed for more is never less."""
    low, high = sorted((a, b))
    texts = [show(kind, value, system) for value in (low, high)]  # type: ignore[arg-type]
    # "0 tex" and "0 oz" are printed for a trace, and are not accepted as input.
    first, last = (parse(kind, text) if not text.startswith("0 ") else 0.0 for text in texts)
    assert first <= last * (1 + 1e-9)


@given(st.sampled_from(KINDS), systems, st.floats(0.1, 5000), st.floats(0.1, 5000))
def test_a_range_ends_with_its_upper_end(kind: str, system: str, a: float, b: float) -> None:
    """A range in words has two numbers and one unit, or is a single value."""
    low, high = sorted((a, b))
    text = show_range(kind, low, high, system)  # type: ignore[arg-type]
    assert text.count(" to ") <= 1
    first, _, last = text.rpartition(" to ")
    assert not any(letter.isalpha() for letter in first)
    assert last


@given(st.sampled_from(KINDS), st.one_of(st.text(max_size=70), st.floats(), st.integers()))
def test_anything_is_read_or_refused(kind: str, value: str | float) -> None:
    """Whatever is written, the answer is a finite number or a ValueError."""
    with contextlib.suppress(ValueError):
        assert math.isfinite(parse(kind, value))


@given(
    st.sampled_from(KINDS),
    st.text(alphabet='0123456789 ./,-+eE"½⅝²°℃inymcdsFCoztexNUSkt%', max_size=20),
)
def test_near_quantities_are_read_or_refused(kind: str, text: str) -> None:
    """The same for text made of the signs that quantities are written with."""
    with contextlib.suppress(ValueError):
        assert math.isfinite(parse(kind, text))

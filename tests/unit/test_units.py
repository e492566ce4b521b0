from __future__ import annotations

import math

import pytest

from advisor.units import fahrenheit, needle, parse, show, show_range
from advisor.units.factors import nm_from_us, us_size

READ = [
    ("length", "15 mm", 15.0),
    ("length", "2,5 cm", 25.0),
    ("length", "0,125 in", 3.175),
    ("length", "1.2 m", 1200.0),
    ("length", "5/8 in", 15.875),
    ("length", '5/8"', 15.875),
    ("length", "5/8″", 15.875),
    ("length", "1 1/2 in", 38.1),
    ("length", "1-1/2 inches", 38.1),
    ("length", "1½ in.", 38.1),
    ("length", "½ in", 12.7),
    ("length", "1 1/2 yd", 1371.6),
    ("length", "1 yd 10 1/2 in", 1181.1),
    ("length", ".5 cm", 5.0),
    ("length", "15MM", 15.0),
    ("length", "15", 15.0),
    ("length", 15, 15.0),
    ("length", "-0 mm", 0.0),
    ("weight", "340 g/m2", 340.0),
    ("weight", "340 g/m²", 340.0),
    ("weight", "340g/m^2", 340.0),
    ("weight", "340 gsm", 340.0),
    ("weight", "10 oz", 339.057474748823),
    ("weight", "10 oz/yd2", 339.057474748823),
    ("weight", "10 oz / yd²", 339.057474748823),
    ("weight", "16 momme", 69.43897082855895),
    ("temperature", "110 C", 110.0),
    ("temperature", "110 °C", 110.0),
    ("temperature", "230 F", 110.0),
    ("temperature", "\N{MINUS SIGN}5 °C", -5.0),
    ("time", "10 s", 10.0),
    ("time", "1.5 min", 90.0),
    ("time", "2 h", 7200.0),
    ("tex", "40 tex", 40.0),
    ("tex", "tex 40", 40.0),
    ("tex", "ticket 75", 40.0),
    ("tex", "tkt. 75", 40.0),
    ("tex", "75 tkt", 40.0),
    ("tex", "Nm 80/2", 25.0),
    ("stitch length", "2.5 mm", 2.5),
    ("stitch length", "10 spi", 2.54),
    ("stitch length", "10 stitches per inch", 2.54),
    ("stitch length", "4 stitches/cm", 2.5),
    ("percent", "80 %", 80.0),
    ("percent", 80, 80.0),
    ("count", "3", 3.0),
    ("needle", "70", 70.0),
    ("needle", "NM 70", 70.0),
    ("needle", "US 10", 70.0),
    ("needle", "70/10", 70.0),
    ("needle", "10/70", 70.0),
]


@pytest.mark.parametrize(("kind", "text", "expected"), READ)
def test_what_makers_write_is_read(kind: str, text: str | float, expected: float) -> None:
    """Each accepted spelling is read into the base unit."""
    assert parse(kind, text) == pytest.approx(expected, rel=1e-12)


REFUSED = [
    ("length", "-5 mm", "below 0"),
    ("length", "1,200 mm", "decimal or thousands"),
    ("length", "5/8", "only with in, yd"),
    ("length", "5/8 cm", "only with in, yd"),
    ("length", "", "empty"),
    ("length", "   ", "empty"),
    ("length", "wide", "no number"),
    ("length", "10–12 mm", "not known here"),
    ("length", "3 feet", "not known here"),
    ("length", "nan", "no number"),
    ("length", float("nan"), "not a finite number"),
    ("length", float("inf"), "not a finite number"),
    ("length", "1e999 mm", "not a finite number"),
    ("length", 10**400, "too large"),
    ("length", "1e12 mm", "too large"),
    ("length", True, "not a quantity"),
    ("length", None, "not a quantity"),
    ("length", [1], "not a quantity"),
    ("length", "9" * 61, "far too long"),
    ("length", "1/0 in", "over 0"),
    ("length", "1 5/4 in", "less than 1"),
    ("length", "\u0661 mm", "no number"),
    ("weight", "0 gsm", "more than 0"),
    ("weight", "10 oz 3", "not known here"),
    ("temperature", "-300 C", "at least -273.15"),
    ("time", "-1 s", "below 0"),
    ("tex", "ticket 0", "must not be 0"),
    ("stitch length", "0 mm", "more than 0"),
    ("stitch length", "0 spi", "must not be 0"),
    ("needle", "80/14", "not the same needle"),
    ("needle", "US 24", "no needle is sold"),
    ("needle", "10", "at least 26"),
]


@pytest.mark.parametrize(("kind", "value", "reason"), REFUSED)
def test_nonsense_is_refused_with_its_reason(kind: str, value: object, reason: str) -> None:
    """What is not a quantity of its kind says why and names the accepted spellings."""
    with pytest.raises(ValueError, match=reason) as refusal:
        parse(kind, value)
    assert "; write " in str(refusal.value)
    assert len(str(refusal.value)) < 250


def test_a_refusal_reads_as_a_sentence() -> None:
    """The whole message: what was written, why not, what to write."""
    with pytest.raises(ValueError, match="length") as refusal:
        parse("length", "3 feet")
    assert str(refusal.value) == (
        "'3 feet' is not a length: the unit 'feet' is not known here; "
        "write mm, cm, m, in or yd, as in 15 mm, 5/8 in, 1 1/2 yd"
    )


def test_a_bare_number_takes_the_unit_of_its_reader() -> None:
    """The unit of a bare number can be named; a written unit wins over it."""
    assert parse("length", 2, "in") == 50.8
    assert parse("length", "5/8", "in") == 15.875
    assert parse("length", "2 cm", "in") == 20.0
    with pytest.raises(ValueError, match="not known here"):
        parse("length", 2, "oz")


def test_an_unknown_kind_is_named_with_the_known_ones() -> None:
    """A kind that does not exist is refused, never treated as plain number."""
    for attempt in (lambda: parse("girth", 1), lambda: show("girth", 1)):
        with pytest.raises(ValueError, match="no kind of quantity is called 'girth'; known: len"):
            attempt()


SHOWN = [
    ("length", 0.0, "0 mm", "0 in"),
    ("length", 0.3, "0.3 mm", "0.012 in"),
    ("length", 6.35, "6.4 mm", "1/4 in"),
    ("length", 15.0, "15 mm", "9/16 in"),
    ("length", 15.875, "16 mm", "5/8 in"),
    ("length", 99.8, "10 cm", "3 15/16 in"),
    ("length", 130.0, "13 cm", "5 1/8 in"),
    ("length", 914.4, "91.4 cm", "1 yd"),
    ("length", 999.9, "1 m", "1 yd 3 3/8 in"),
    ("length", 1200.0, "1.2 m", "1 yd 11 1/4 in"),
    ("length", 1371.6, "1.37 m", "1 1/2 yd"),
    ("weight", 340.0, "340 g/m²", "10 oz/yd²"),
    ("weight", 20.0, "20 g/m²", "0.59 oz/yd²"),
    ("temperature", 110.0, "110 °C", "230 °F"),
    ("temperature", -5.0, "-5 °C", "23 °F"),
    ("stitch length", 2.5, "2.5 mm", "10 stitches per inch"),
    ("stitch length", 0.0, "0 mm", "0 mm"),
    ("tex", 40.0, "40 tex", "40 tex"),
    ("time", 8.0, "8 s", "8 s"),
    ("time", 90.0, "90 s", "90 s"),
    ("time", 1800.0, "30 min", "30 min"),
    ("time", 9000.0, "2.5 h", "2.5 h"),
    ("percent", 80.0, "80 %", "80 %"),
    ("count", 2.5, "2.5", "2.5"),
    ("needle", 70.0, "70 (US 10)", "70 (US 10)"),
    ("length", -15.0, "-15 mm", "-9/16 in"),
]


@pytest.mark.parametrize(("kind", "value", "metric", "us"), SHOWN)
def test_quantities_are_shown_as_a_maker_reads_them(
    kind: str, value: float, metric: str, us: str
) -> None:
    """Each quantity is printed in the unit that suits its size, in both systems."""
    assert (metric, us) == (show(kind, value, "metric"), show(kind, value, "us"))


RANGES = [
    ("needle", 60, 75, "metric", "60 to 75"),
    ("length", 10, 15, "metric", "10 to 15 mm"),
    ("length", 5, 130, "metric", "0.5 to 13 cm"),
    ("length", 6.35, 15.875, "us", "1/4 to 5/8 in"),
    ("temperature", 110, 150, "us", "230 to 302 °F"),
    ("temperature", -math.inf, 110, "metric", "at most 110 °C"),
    ("needle", 70, math.inf, "metric", "at least 70 (US 10)"),
    ("stitch length", 2, 2.5, "metric", "2 to 2.5 mm"),
    ("stitch length", 2, 2.5, "us", "10 to 13 stitches per inch"),
    ("stitch length", 0, 2.5, "us", "at least 10 stitches per inch"),
    ("stitch length", 2.5, math.inf, "us", "at most 10 stitches per inch"),
    ("time", 5, 5, "metric", "5 s"),
    ("count", -math.inf, math.inf, "metric", "any"),
]


@pytest.mark.parametrize(("kind", "low", "high", "system", "expected"), RANGES)
def test_a_range_names_its_unit_once(
    kind: str, low: float, high: float, system: str, expected: str
) -> None:
    """A range is 'low to high unit'; an open end is said in words."""
    assert expected == show_range(kind, low, high, system)  # type: ignore[arg-type]


def test_what_is_no_range_or_no_number_is_not_printed() -> None:
    """Nonsense from inside is a fault and must not reach a sheet."""
    for low, high in ((2.0, 1.0), (math.nan, 1.0), (1.0, math.nan)):
        with pytest.raises(ValueError, match="not a range"):
            show_range("length", low, high)
    for value in (math.nan, math.inf, 1e300):
        with pytest.raises(ValueError, match="cannot be printed"):
            show("length", value)


def test_needles_carry_their_us_label() -> None:
    """NM is the key, the US number a label that some sizes lack."""
    assert ("70 (US 10)", "115") == (needle(70), needle(115))
    assert (10, None, None) == (us_size(70), us_size(115), us_size(72.5))
    assert nm_from_us(16) == 100
    with pytest.raises(ValueError, match="US 24"):
        nm_from_us(24)


def test_fahrenheit_of_the_fixed_points_of_water() -> None:
    """Water freezes at 32 °F and boils at 212 °F."""
    assert (32.0, 212.0) == (fahrenheit(0), fahrenheit(100))

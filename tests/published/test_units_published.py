"""Unit factors, needle sizes and thread numbers against published values.

Each row carries the id of its source; `derived` is arithmetic on exact definitions. The
second table compares every factor with an independent library of units.
"""

from __future__ import annotations

import pint
import pytest

from advisor.units import factors, parse
from advisor.units.factors import NM_US, nm_from_us, us_size

# text, kind, published value, digits after the point that were published, source
VALUES = [
    ("length", "1 in", 25.4, 4, "derived"),
    ("length", "1 yd", 914.4, 4, "derived"),
    ("weight", "1 oz/yd2", 33.906, 3, "derived"),
    ("weight", "1 oz/yd2", 33.9057, 4, "derived"),
    ("weight", "1 momme", 4.340, 3, "momme-pages"),
    ("weight", "1 momme", 4.33994, 5, "derived"),
    ("weight", "2.6 oz/yd2", 88.2, 1, "derived"),
    ("stitch length", "12 spi", 2.1, 1, "derived"),
    ("stitch length", "10 spi", 2.5, 1, "trade-stitch-length"),
    ("stitch length", "8 spi", 3.2, 1, "ext-fake-fur"),
    ("stitch length", "10 spi", 2.5, 1, "ext-fake-fur"),
    ("stitch length", "8 spi", 3.2, 1, "threads-leather-2008"),
    ("stitch length", "14 spi", 1.8, 1, "trade-stitch-length"),
    ("tex", "ticket 75", 40, 0, "trade-ticket-2013"),
    ("tex", "Nm 80/2", 25, 0, "trade-ticket-2013"),
    ("tex", "ticket 120", 25, 0, "trade-ticket-2013"),
    ("tex", "Ne 1", 590.54, 2, "thread-bulletin-05"),
    ("tex", "Nm 1", 1000, 0, "thread-bulletin-05"),
    ("tex", "9 denier", 1, 6, "thread-bulletin-05"),
    ("tex", "10 dtex", 1, 6, "thread-bulletin-05"),
    ("tex", "20 den", 2.222, 3, "derived"),
    ("tex", "30 den", 3.333, 3, "derived"),
    ("tex", "40 den", 4.444, 3, "derived"),
    ("tex", "70 den", 7.778, 3, "derived"),
    ("tex", "75 den", 8.333, 3, "derived"),
    ("tex", "100 den", 11.11, 2, "derived"),
    ("tex", "150 den", 16.667, 3, "derived"),
    ("tex", "210 den", 23.33, 2, "derived"),
    ("tex", "Ne 30/2", 39.37, 2, "derived"),
    ("tex", "ticket 60", 50, 0, "thread-size-pages"),
    ("tex", "ticket 180", 16.7, 1, "thread-size-pages"),
    ("tex", "ticket 150", 20, 0, "thread-size-pages"),
    ("tex", "ticket 100", 30, 0, "thread-size-pages"),
    ("tex", "ticket 80", 37.5, 1, "thread-size-pages"),
    ("tex", "ticket 50", 60, 0, "thread-size-pages"),
    ("tex", "ticket 40", 75, 0, "thread-size-pages"),
    ("tex", "ticket 36", 83, 0, "thread-size-pages"),
    ("tex", "ticket 30", 100, 0, "thread-size-pages"),
    ("tex", "ticket 20", 150, 0, "thread-size-pages"),
]


@pytest.mark.parametrize(("kind", "text", "published", "digits", "source"), VALUES)
def test_published_quantities(
    kind: str, text: str, published: float, digits: int, source: str
) -> None:
    """A quantity reads as the published value, to the digits that were published."""
    assert parse(kind, text) == pytest.approx(published, abs=0.5001 * 10**-digits), source


# Found in independent places up to NM 120; less sure above, where NM alone should be relied on.
NEEDLES = [
    (60, 8, "trade-needle-number"),
    (65, 9, "trade-needle-number"),
    (70, 10, "trade-needle-number"),
    (75, 11, "trade-needle-number"),
    (80, 12, "trade-needle-number"),
    (85, 13, "trade-needle-number"),
    (90, 14, "trade-needle-number"),
    (95, 15, "trade-needle-number"),
    (100, 16, "trade-needle-number"),
    (105, 17, "trade-needle-number"),
    (110, 18, "trade-needle-number"),
    (120, 19, "trade-needle-number"),
    (125, 20, "trade-needle-number"),
    (130, 21, "trade-needle-number"),
    (140, 22, "trade-needle-number"),
    (160, 23, "trade-needle-number"),
    (200, 25, "trade-needle-number"),
]


@pytest.mark.parametrize(("nm", "us", "source"), NEEDLES)
def test_published_needle_sizes(nm: int, us: int, source: str) -> None:
    """Metric and US sizes stand side by side as published."""
    assert (us, nm) == (us_size(nm), nm_from_us(us)), source


def test_the_needle_table_has_no_row_that_was_not_published() -> None:
    """The table in use is the published one, row for row."""
    assert {nm: us for nm, us, _ in NEEDLES} == NM_US


def test_the_published_rule_for_small_needles() -> None:
    """Below US 19, NM = 60 + 5 × (US - 8) (trade-needle-number)."""
    small = {us: nm for nm, us in NM_US.items() if us < 19}
    assert small == {us: 60 + 5 * (us - 8) for us in range(8, 19)}


@pytest.mark.parametrize(("nm", "blade_mm", "source"), [(80, 0.80, "trade-needle-number")])
def test_nm_is_a_hundred_times_the_blade(nm: int, blade_mm: float, source: str) -> None:
    """NM is 100 times the blade's diameter in millimetres."""
    assert nm == pytest.approx(100 * blade_mm), source


@pytest.mark.parametrize(
    ("cotton_ticket", "tex", "source"),
    [(60, 29.5, "thread-size-pages"), (1, 1771.6, "thread-size-pages")],
)
def test_a_cotton_ticket_is_not_a_metric_one(cotton_ticket: int, tex: float, source: str) -> None:
    """The cotton ticket is three times the English count, and another thread than metric."""
    assert factors.TEX_COTTON_TICKET / cotton_ticket == pytest.approx(tex, abs=0.05), source
    assert factors.TEX_TICKET / 60 == 50


PINT: pint.UnitRegistry[float] = pint.UnitRegistry()
FACTORS = [
    (factors.MM_PER_INCH, "inch", "mm"),
    (factors.MM_PER_YARD, "yard", "mm"),
    (factors.KG_PER_POUND, "pound", "kg"),
    (factors.GRAM_PER_OUNCE, "ounce", "gram"),
    (factors.OUNCE_PER_SQUARE_YARD, "ounce / yard ** 2", "gram / meter ** 2"),
    (factors.MOMME, "pound / (100 * yard * 45 * inch)", "gram / meter ** 2"),
    (1 / factors.TEX_NM, "gram / km", "kg / km"),
    (factors.TEX_NE, "pound / (840 * yard)", "gram / km"),
    (factors.TEX_COTTON_TICKET / 3, "pound / (840 * yard)", "gram / km"),
    (factors.TEX_TICKET / 3, "gram / meter", "gram / km"),
    (parse("tex", "1 den"), "gram / (9 * km)", "gram / km"),
    (parse("tex", "1 dtex"), "gram / (10 * km)", "gram / km"),
    (parse("time", "1 min"), "minute", "second"),
    (parse("time", "1 h"), "hour", "second"),
    (parse("length", "1 cm"), "cm", "mm"),
    (parse("length", "1 m"), "meter", "mm"),
    (parse("stitch length", "1 spi"), "inch", "mm"),
    (parse("stitch length", "1 st/cm"), "cm", "mm"),
]


@pytest.mark.parametrize(("ours", "unit", "base"), FACTORS)
def test_factors_agree_with_an_independent_library(ours: float, unit: str, base: str) -> None:
    """Every factor is that of an independent library of units, to the last digits."""
    assert PINT.parse_expression(unit).to(base).magnitude == pytest.approx(ours, rel=1e-14)


@pytest.mark.parametrize("fahrenheit", [-459.67, -40, 0, 32, 230, 302, 485])
def test_temperatures_agree_with_an_independent_library(fahrenheit: float) -> None:
    """Degrees Fahrenheit are read as the library reads them."""
    theirs = PINT.Quantity(fahrenheit, "degF").to("degC").magnitude
    assert theirs == pytest.approx(parse("temperature", f"{fahrenheit} F"), abs=1e-9)
    assert fahrenheit == pytest.approx(factors.fahrenheit(theirs), abs=1e-9)

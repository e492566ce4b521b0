"""Unit tests of gathers, tucks, flounces, panels and tiers."""

from __future__ import annotations

import math
from collections.abc import Callable

import pytest

from advisor.craft import fullness
from advisor.craft.fullness import GatherMethod, Weight


def test_every_weight_and_method_has_a_ratio_and_a_source() -> None:
    """No class or way of gathering without a ratio, low not above high."""
    rows = [*fullness.GATHER_RATIOS.values(), *fullness.METHOD_RATIOS.values()]
    assert set(Weight) == set(fullness.GATHER_RATIOS)
    assert set(GatherMethod) == set(fullness.METHOD_RATIOS)
    assert all(1 <= row.low <= row.high and row.sources for row in rows)


def test_full_circle_flounce() -> None:
    """A full circle on 62.83 has radius 10; twice the radius out, twice the hem."""
    ring = fullness.flounce(2 * math.pi * 10, 10)
    assert (10, 20, 2, 40) == pytest.approx(
        (ring.inner_radius, ring.outer_radius, ring.hem_fullness, ring.square)
    )
    assert 4 * math.pi * 10 == pytest.approx(ring.hem_length)


def test_more_rings_are_smaller_and_fuller() -> None:
    """Two rings for one seam have half the radius each, so more fullness at the hem."""
    one, two = (fullness.flounce(600, 100, pieces=pieces) for pieces in (1, 2))
    assert one.inner_radius == pytest.approx(2 * two.inner_radius)
    assert two.hem_fullness > one.hem_fullness


def test_ruffle_depths() -> None:
    """A single ruffle has hem and seam, a doubled one everything twice and no hem."""
    assert 100 + 10 + 15 == fullness.ruffle_depth(100, 10, 15)
    assert 2 * (100 + 15) == fullness.ruffle_depth(100, 10, 15, doubled=True)


def test_tiers_multiply() -> None:
    """Each tier multiplies the one above."""
    assert (150, 225) == pytest.approx(fullness.tiers(100, [1.5, 1.5]))


def test_own_number_of_panels() -> None:
    """A maker's own number is kept when the cloth allows it."""
    assert 40 == pytest.approx(fullness.panels(72, 2, 140, 2, number=4).panel_width)


@pytest.mark.parametrize(
    ("call", "message"),
    [
        (lambda: fullness.cut_width(100, 0.9), "fullness must be at least 1"),
        (lambda: fullness.cut_width(-5, 2), "finished edge"),
        (lambda: fullness.tucks(2, 3, spacing=1.5), "deeper than its spacing"),
        (lambda: fullness.flounce(100, 20, turn=1.5), "share of a circle"),
        (lambda: fullness.cut_length(-1, 1, 1), "finished length"),
        (lambda: fullness.cut_length(10, 1, 1, shrinkage=1), "shrinkage"),
        (lambda: fullness.panels(100, 2, 140, 1.5, number=1), "wider than the cloth"),
        (lambda: fullness.panels(100, 2, 3, 1.5), "used up by its seams"),
        (lambda: fullness.panels(100, 2, 140, 1.5, number=0), "panels"),
        (lambda: fullness.tiers(100, [0.5]), "fullness"),
        (lambda: fullness.cut_width(float("inf"), 2), "not a number that can be measured"),
    ],
)
def test_bad_numbers(call: Callable[[], object], message: str) -> None:
    """Each bad number gets a message that names it."""
    with pytest.raises(ValueError, match=message):
        call()

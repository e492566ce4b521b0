"""Boning and curved hems against worked figures of plain geometry and beam theory (derived)."""

from __future__ import annotations

import itertools
import math

import pytest

from advisor.craft import boning, fullness


def test_steel_of_three_tenths_bends_to_37_mm() -> None:
    """0.3 mm / (2 × 0.4 %) = 37.5 mm; the strain that steel bears is from memory."""
    assert 37.5 == pytest.approx(boning.least_radius(0.3, boning.STRAIN["steel"]))


def test_a_bone_is_half_an_inch_shorter_than_its_channel() -> None:
    """6 mm are left free at each end (common practice); a channel of 10 mm holds none."""
    assert 288 == boning.cut_length(300)
    with pytest.raises(ValueError, match="bone"):
        boning.cut_length(10)


@pytest.mark.parametrize(("radius", "depth"), [(250, 20), (600, 15), (1000, 50)])
def test_the_surplus_of_a_curved_hem(radius: float, depth: float) -> None:
    """The raw edge folded over point by point, against the line that it then lies on.

    Turned over the finished edge, a point outside it comes to lie as far inside; both lines are
    measured as chains of a thousand chords, and not by any formula of arcs.
    """
    raw, line = (
        _chain([(r * math.cos(t / 1000), r * math.sin(t / 1000)) for t in range(1001)])
        for r in (radius + depth, radius - depth)
    )
    assert raw / line - 1 == pytest.approx(fullness.hem_surplus(depth, radius), rel=1e-6)
    most = fullness.deepest_hem(radius, 0.03)
    assert 0.03 == pytest.approx(fullness.hem_surplus(most, radius))


def _chain(points: list[tuple[float, float]]) -> float:
    return sum(math.dist(a, b) for a, b in itertools.pairwise(points))


def test_the_hem_of_a_full_circle_is_too_long_by_12_cm() -> None:
    """A circle hemmed 1 cm deep: 4π cm too much, whatever its radius (derived)."""
    for radius in (300.0, 700.0):
        line = 2 * math.pi * (radius - 10)
        assert 40 * math.pi == pytest.approx(line * fullness.hem_surplus(10, radius))


def test_a_hem_as_deep_as_its_radius_has_no_line_to_be_sewn_to() -> None:
    """It is far too much, and no fault of arithmetic."""
    assert math.isinf(fullness.hem_surplus(30, 30))

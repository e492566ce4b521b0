"""Boning and curved hems against worked figures of plain geometry and beam theory (derived)."""

from __future__ import annotations

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
    """By the lengths of both arcs: the raw edge at radius + depth against the finished one."""
    finished, raw = (math.pi * r for r in (radius, radius + depth))
    assert raw / finished - 1 == pytest.approx(fullness.hem_surplus(depth, radius))
    most = fullness.deepest_hem(radius, 0.03)
    assert 0.03 == pytest.approx(fullness.hem_surplus(most, radius))

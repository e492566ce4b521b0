"""Unit tests of thickness and lift."""

from __future__ import annotations

from collections.abc import Callable

import pytest

from advisor.craft import thickness
from advisor.craft.thickness import USUAL_PACKING, StackedCloth, Structure


def test_under_foot_is_the_packed_thickness() -> None:
    """200 g/m² of density 1.5 packs to 200 / (1000 × 1.5 × 0.55) under the foot."""
    stack = [StackedCloth(0.6, 2, 200, 1.5)]
    assert 2 * 200 / (1000 * 1.5 * 0.55) == pytest.approx(thickness.under_foot(stack))


def test_unknown_weight_does_not_give() -> None:
    """A layer of unknown weight keeps its thickness: unknown is not soft."""
    assert 1.6 == pytest.approx(thickness.under_foot([StackedCloth(0.8, 2)]))
    assert 1.6 == pytest.approx(thickness.under_foot([StackedCloth(0.8, 2, weight_g_m2=300)]))


def test_dense_layer_is_not_thickened_by_pressing() -> None:
    """A sheet denser than the foot's packing stays as it is."""
    assert 0.5 == thickness.under_foot([StackedCloth(0.5, 1, 600, 1.3)])


def test_packing_of_usual_cloths() -> None:
    """A 0.25 mm, 130 g/m² cotton poplin packs as wovens do, not as knits."""
    packing = thickness.least_thickness(130, 1.52) / 0.25
    low, high = USUAL_PACKING[Structure.WOVEN]
    assert low <= packing <= high
    assert packing > USUAL_PACKING[Structure.KNIT][1]


def test_the_thinnest_that_a_cloth_can_be() -> None:
    """400 g/m² of density 1.6 is a sheet of 0.25 mm at the least."""
    assert 0.25 == thickness.least_thickness(400, 1.6)


@pytest.mark.parametrize(
    ("call", "message"),
    [
        (lambda: StackedCloth(0), "thickness of a cloth"),
        (lambda: StackedCloth(1, -1), "plies"),
        (lambda: thickness.least_thickness(100, 0), "density"),
        (lambda: thickness.thickness_from_packing(100, 1.5, 1.2), "cannot exceed 1"),
    ],
)
def test_bad_numbers(call: Callable[[], object], message: str) -> None:
    """Each bad number is named."""
    with pytest.raises(ValueError, match=message):
        call()

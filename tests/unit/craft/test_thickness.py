"""Unit tests of thickness and lift."""

from __future__ import annotations

import pytest

from advisor.craft import thickness
from advisor.craft.thickness import Layer, Room, Structure


def test_under_foot_is_the_packed_thickness():
    """200 g/m² of density 1.5 packs to 200 / (1000 × 1.5 × 0.55) under the foot."""
    stack = [Layer(0.6, 2, 200, 1.5)]
    assert 2 * 200 / (1000 * 1.5 * 0.55) == pytest.approx(thickness.under_foot(stack))


def test_unknown_weight_does_not_give():
    """A layer of unknown weight keeps its thickness: unknown is not soft."""
    assert 1.6 == pytest.approx(thickness.under_foot([Layer(0.8, 2)]))
    assert 1.6 == pytest.approx(thickness.under_foot([Layer(0.8, 2, weight_g_m2=300)]))


def test_dense_layer_is_not_thickened_by_pressing():
    """A sheet denser than the foot's packing stays as it is."""
    assert 0.5 == thickness.under_foot([Layer(0.5, 1, 600, 1.3)])


@pytest.mark.parametrize(
    ("height", "lift", "expected"),
    [
        (2.99, 6, Room.FINE),
        (3.0, 6, Room.TIGHT),
        (4.49, 6, Room.TIGHT),
        (4.5, 6, Room.TOO_THICK),
        (None, 6, Room.UNKNOWN),
        (1.0, None, Room.UNKNOWN),
    ],
)
def test_room(height, lift, expected):
    """Tight from half the lift, too thick from three quarters; unknown is said."""
    assert expected is thickness.room(height, lift)


def test_bulk_judges_the_height_as_it_lies():
    """Loading decides: a soft stack is too thick though it would press thin."""
    found = thickness.bulk([Layer(2.5, 2, 300, 1.4)], 6)
    assert Room.TOO_THICK is found.room
    assert found.under_foot_mm < 1
    assert 5 / 6 == pytest.approx(found.share_of_lift)
    assert "design-choice" in found.sources


def test_bulk_without_a_lift():
    """Without the machine's lift there is a thickness but no verdict."""
    found = thickness.bulk([Layer(1.0, 2)], None)
    assert (2.0, None, Room.UNKNOWN) == (found.as_it_lies_mm, found.share_of_lift, found.room)


def test_packing_of_usual_cloths():
    """A 0.25 mm, 130 g/m² cotton poplin packs as wovens do, not as knits."""
    packing = thickness.packing_from_thickness(130, 1.52, 0.25)
    assert thickness.packing_is_usual(packing, Structure.WOVEN)
    assert not thickness.packing_is_usual(packing, Structure.KNIT)


def test_cloth_denser_than_its_fibre():
    """A weight that cannot be in such a thickness is refused."""
    with pytest.raises(ValueError, match="denser than its fibre"):
        thickness.packing_from_thickness(400, 1.5, 0.2)


@pytest.mark.parametrize(
    ("call", "message"),
    [
        (lambda: Layer(0), "thickness of a cloth"),
        (lambda: Layer(1, -1), "plies"),
        (lambda: thickness.room(1, 0), "foot lift"),
        (lambda: thickness.bulk([], 6), "at least one layer"),
        (lambda: thickness.thickness_from_packing(100, 1.5, 1.2), "cannot exceed 1"),
    ],
)
def test_bad_numbers(call, message):
    """Each bad number is named."""
    with pytest.raises(ValueError, match=message):
        call()

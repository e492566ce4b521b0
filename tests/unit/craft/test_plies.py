"""Unit tests of the counting of plies."""

from __future__ import annotations

import pytest

from advisor.craft import plies
from advisor.craft.plies import Plies, Pressed, ZipSetting


def test_total_adds_cloth_and_tape():
    """A stack's total counts both cloths and the tape."""
    assert 6 == Plies(2, 3, 1).total


def test_underlined_side_counts_twice():
    """An underlined side brings two plies to the seam and doubles beside it."""
    assert Plies(2, 1) == plies.stitch_line(2, 1)
    assert Plies(4, 0) == plies.beside(Pressed.OPEN, 2, 1)
    assert Plies(4, 1) == plies.beside(Pressed.ONE_SIDE, 2, 1)


def test_open_seams_do_not_care_about_direction():
    """Open seams have no way to be pressed, so opposite changes nothing."""
    same = plies.crossing_of_seams(Pressed.OPEN, Pressed.OPEN)
    assert 4 == same == plies.crossing_of_seams(Pressed.OPEN, Pressed.OPEN, opposite=True)


def test_one_sided_crossing_beside_the_new_seam():
    """Two plies of one panel bring 3 each, the other panel's single ply 1."""
    opposite = plies.crossing_of_seams(Pressed.ONE_SIDE, Pressed.ONE_SIDE, opposite=True)
    assert 2 * 3 + 1 * 1 == opposite


def test_touching_pleats_are_three_on_the_flat():
    """A pleated edge has three plies on a fold, a flat edge under it one."""
    assert Plies(1, 3) == plies.pleated_edge(3, 3)
    assert Plies(2, 3) == plies.pleated_edge(1.5, 3, both_ways=True, flat=2)
    assert Plies(1, 1) == plies.pleated_edge(0, 3)


@pytest.mark.parametrize("both_ways", [False, True])
def test_pleat_deeper_than_its_spacing(both_ways):
    """A fold that would lie on the next one is refused by name."""
    with pytest.raises(ValueError, match="deeper than its spacing allows"):
        plies.pleated_edge(3.1, 3, both_ways=both_ways)


def test_hems():
    """Turned once 2, twice 3; over an open seam each ply counts double."""
    assert (2, 3) == (plies.hem(1).total, plies.hem(2).total)
    assert 4 == plies.hem_over_seam(1, Pressed.OPEN)
    assert 9 == plies.hem_over_seam(2, Pressed.ONE_SIDE)


def test_zip_ends():
    """Cloth, its allowance and the tape; a seam across repeats the cloth, not the tape."""
    assert Plies(2, 0, 1) == plies.zip_end(ZipSetting.CENTRED, tape_folded=False)
    assert Plies(4, 0, 2) == plies.zip_end(ZipSetting.CONCEALED, crossed=2)
    assert 6 == plies.zip_end(ZipSetting.LAPPED).total


def test_mock_french_is_a_french_ridge():
    """Two doubled allowances make the same ridge."""
    assert plies.french() == plies.mock_french()


@pytest.mark.parametrize("ratio", [0.9, 0, -2, float("nan")])
def test_fullness_below_one(ratio):
    """Cloth cannot be gathered to more than its width."""
    with pytest.raises(ValueError, match="fullness"):
        plies.gathered_edge(ratio)


def test_crossing_without_panels():
    """A crossing of nothing is refused."""
    with pytest.raises(ValueError, match="at least one panel"):
        plies.crossing()

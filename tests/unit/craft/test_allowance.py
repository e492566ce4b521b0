"""Unit tests of finishes, grading, strips and turn of cloth."""

from __future__ import annotations

from collections.abc import Callable

import pytest

from advisor.craft import allowance
from advisor.craft.allowance import Finish
from advisor.units.factors import MM_PER_INCH


def test_every_finish_has_a_need_and_a_source() -> None:
    """No finish without a width, none without its source."""
    assert set(Finish) == set(allowance.NEEDS)
    assert all(row.sources and row.needs_mm > 0 for row in allowance.NEEDS.values())


def test_finished_width_stays_within_the_allowance() -> None:
    """No finish ends wider than what it was cut from."""
    assert all(row.finished_mm <= row.needs_mm for row in allowance.NEEDS.values())


def test_french_fits_the_usual_allowance_but_not_a_narrow_one() -> None:
    """15 mm counts as 5/8 in; 10 mm is 5.9 mm short."""
    assert allowance.fit(Finish.FRENCH, 15).fits
    narrow = allowance.fit(Finish.FRENCH, 10)
    assert not narrow.fits
    assert 5.875 == pytest.approx(narrow.short_mm)


def test_thick_turn_asks_more_of_a_french_seam_only() -> None:
    """The extra 1/8 in is for the French seam's turn."""
    assert not allowance.fit(Finish.FRENCH, 15, thick_turn=True).fits
    plain = allowance.need(Finish.TURNED)
    assert plain == allowance.need(Finish.TURNED, thick_turn=True)


def test_straight_only_finishes() -> None:
    """French, felled and turned edges want a straight seam; a mock French takes a curve."""
    straight = {row.finish for row in allowance.NEEDS.values() if not row.curves}
    assert {Finish.FRENCH, Finish.FELLED, Finish.TURNED} == straight
    assert allowance.NEEDS[Finish.MOCK_FRENCH].curves


def test_grading_three_layers() -> None:
    """Three allowances step 3/8, 1/4, 1/8 in, or evenly in what there is."""
    inch = MM_PER_INCH
    assert (3 / 8, 1 / 4, 1 / 8) == pytest.approx(
        tuple(width / inch for width in allowance.grade(3).widths_mm)
    )
    tight = allowance.grade(3, 6.0).widths_mm
    assert (6.0, (6 + 3.175) / 2, 3.175) == pytest.approx(tight)


def test_a_single_allowance_is_trimmed_to_the_outer_width() -> None:
    """One allowance has nothing to step from: it keeps the outer 1/4 in."""
    assert (2 * allowance.EIGHTH,) == allowance.grade(1).widths_mm


def test_when_to_grade() -> None:
    """Heavy cloth always, otherwise from three layers."""
    assert allowance.needs_grading(2, heavy=True)
    assert allowance.needs_grading(3, heavy=False)
    assert not allowance.needs_grading(2, heavy=False)


def test_a_square_holds_its_strip() -> None:
    """4 m of strip 25 mm wide are 1000 cm²; with 18 joins and two corners 33 cm a side."""
    assert 330.4 == pytest.approx(allowance.strip_square(4000, 25), abs=0.05)


def test_a_short_allowance_takes_a_narrower_french_seam() -> None:
    """10 mm take rows of 1/8 and 1/4 in, 13 mm two of 1/4 in, 5 mm none."""
    eighth = allowance.EIGHTH
    assert (eighth, 2 * eighth) == allowance.narrower_french(10)
    assert (2 * eighth, 2 * eighth) == allowance.narrower_french(13)
    assert allowance.narrower_french(5) is None


def test_favour_is_one_to_two_thicknesses() -> None:
    """The shell rolls over the edge by its thickness, up to twice."""
    assert (0.5, 1.0) == allowance.favour(0.5)


@pytest.mark.parametrize(
    ("call", "message"),
    [
        (lambda: allowance.fit(Finish.FRENCH, -1), "allowance"),
        (lambda: allowance.grade(2, 3.0), "below 1/8 in"),
        (lambda: allowance.grade(0), "plies"),
        (lambda: allowance.hong_kong_strip(0), "allowance"),
        (lambda: allowance.strip_square(0, 25), "strip length"),
        (lambda: allowance.turn_of_cloth(-1, 1), "thickness"),
    ],
)
def test_bad_numbers(call: Callable[[], object], message: str) -> None:
    """Each bad number is named."""
    with pytest.raises(ValueError, match=message):
        call()

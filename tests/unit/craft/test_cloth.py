"""Unit tests of the cloth to buy, and packing against an exact solver."""

from __future__ import annotations

from collections.abc import Callable

import pytest

from advisor.craft import cloth
from advisor.craft.checks import TooWideError
from advisor.craft.cloth import BoughtCloth, CutPiece
from advisor.craft.strip import Box, pack
from tests.lay_oracle import Lot, shortest


def test_any_grain_matches_the_exact_answer_over_both_ways() -> None:
    """An any-grain piece takes the better of its two ways, others keep theirs."""
    pieces = [CutPiece(60, 100, 2), CutPiece(90, 30, 1, any_grain=True), CutPiece(40, 50, 1)]
    lots = [Lot(60, 100), Lot(60, 100), Lot(90, 30, turns=True), Lot(40, 50)]
    assert (cloth.estimate(pieces, BoughtCloth(150)).packed_mm, True) == shortest(lots, 150)


def test_grain_is_locked() -> None:
    """A piece is never turned a quarter unless it allows any grain."""
    locked = cloth.estimate([CutPiece(300, 900)], BoughtCloth(1000)).packed_mm
    free = cloth.estimate([CutPiece(300, 900, any_grain=True)], BoughtCloth(1000)).packed_mm
    assert (900, 300) == (locked, free)


def test_nap_stops_turning_end_for_end() -> None:
    """Two flared panels share a width head to tail; with nap they need two lengths."""
    panel = CutPiece(800, 900, 2, narrow_mm=300)
    assert 900 == cloth.estimate([panel], BoughtCloth(1350)).packed_mm
    assert 1800 == cloth.estimate([panel], BoughtCloth(1349)).packed_mm
    assert 1800 == cloth.estimate([panel], BoughtCloth(1400, one_way=True)).packed_mm


def test_shrinkage_repeat_and_selvage() -> None:
    """Shrinkage lengthens and narrows, selvages narrow, ends lengthen once."""
    pieces = [CutPiece(700, 950, 2)]
    assert 950 / 0.95 == pytest.approx(
        cloth.estimate([CutPiece(700, 950, 2)], BoughtCloth(1400, shrinks_long=0.05)).length_mm
    )
    assert (950 + 15) / 0.95 == pytest.approx(
        cloth.estimate(pieces, BoughtCloth(1400, shrinks_long=0.05, ends_mm=15)).length_mm
    )
    narrower = [CutPiece(695, 950, 2)]
    assert 950 == cloth.estimate(narrower, BoughtCloth(1400, selvage_mm=5)).length_mm
    assert 1900 == cloth.estimate(narrower, BoughtCloth(1400, selvage_mm=10)).length_mm
    assert 1900 == cloth.estimate(pieces, BoughtCloth(1400, shrinks_wide=0.02)).length_mm


def test_matched_pieces_begin_where_the_repeat_does() -> None:
    """Side by side they cost nothing; the next row waits for the repeat, which shrinks too."""
    three = [CutPiece(600, 950, 3, matched=True)]
    assert 950 == cloth.estimate(three[:1] * 1, BoughtCloth(1900, repeat_mm=320)).packed_mm
    assert 3 * 320 + 950 == cloth.estimate(three, BoughtCloth(1400, repeat_mm=320)).packed_mm
    shrunk = cloth.estimate(three, BoughtCloth(1400, repeat_mm=400, shrinks_long=0.05))
    assert 3 * 380 + 950 == pytest.approx(shrunk.packed_mm)


def test_a_fold_takes_pieces_two_at_a_time() -> None:
    """A pair lies once on half the width; an odd piece half on the fold beside it."""
    lot = [CutPiece(400, 860, 2), CutPiece(660, 840)]
    assert 860 == cloth.estimate(lot, BoughtCloth(1500), folded=True).packed_mm
    assert 860 + 840 == cloth.estimate(lot, BoughtCloth(1450), folded=True).packed_mm
    with pytest.raises(TooWideError):
        cloth.estimate([CutPiece(400, 860, 2)], BoughtCloth(790), folded=True)


def test_a_bias_piece_spans_both_its_sides() -> None:
    """(1000 + 1120)/√2 = 1499 mm across: refused on 1400, and on 1500 as long as it is wide."""
    piece = CutPiece(1000, 1120, bias=True)
    with pytest.raises(TooWideError) as refused:
        cloth.estimate([piece], BoughtCloth(1400))
    assert (1499.07, 1400, True) == (
        pytest.approx(refused.value.across, abs=0.01),
        refused.value.usable,
        refused.value.bias,
    )
    assert 1499.07 == pytest.approx(cloth.estimate([piece], BoughtCloth(1500)).packed_mm, abs=0.01)


def test_a_second_bias_piece_nests() -> None:
    """The next that leans as it does begins √2 times the shorter side further on."""
    alike = [CutPiece(1000, 1120, bias=True)] * 2
    two = cloth.estimate(alike, BoughtCloth(1500)).packed_mm
    assert 2120 / 2**0.5 + 2**0.5 * 1000 - 1 <= two <= 2120 / 2**0.5 + 2**0.5 * 1000


def test_a_joined_bias_strip_goes_by_its_area() -> None:
    """Four metres of 30 mm with its joins and two corners: a square of 361.2 mm."""
    strip = CutPiece(30, 4000, bias=True, joined=True)
    assert 361.2 == pytest.approx(cloth.estimate([strip], BoughtCloth(1400)).packed_mm, abs=0.1)


def test_result_says_that_it_is_an_estimate() -> None:
    """The result is marked, carries its bounds, and is rounded up both ways."""
    found = cloth.estimate([CutPiece(600, 1010, 2)], BoughtCloth(1400))
    assert "estimate" == found.kind
    assert "estimate" in found.sources
    assert (1010, 1010) == (found.packed_mm, found.least_mm)
    assert (1100, 9 * cloth.US_STEP_MM) == pytest.approx((found.buy_metric_mm, found.buy_us_mm))
    assert 2 * 600 / 1400 == pytest.approx(found.used)


def test_rounding_up_keeps_an_exact_length() -> None:
    """A length that is sold as it stands is not rounded up."""
    assert 1100 == cloth.round_up_to_shop(1100)
    assert 1200 == cloth.round_up_to_shop(1100.5)
    inches = 4 * 9.25 + 4 * 8.75
    assert 16 * cloth.US_STEP_MM == cloth.round_up_to_shop(inches * 25.4, cloth.US_STEP_MM)
    assert 17 * cloth.US_STEP_MM == cloth.round_up_to_shop(72.01 * 25.4, cloth.US_STEP_MM)
    assert 914.4 == pytest.approx(cloth.round_up_to_shop(914.4, cloth.US_STEP_MM))


def test_same_pieces_same_answer() -> None:
    """The order in which pieces are named does not matter, nor a second run."""
    pieces = [
        CutPiece(310, 640, 3),
        CutPiece(420, 380, 2),
        CutPiece(150, 900, 4),
        CutPiece(90, 90, 6),
    ]
    first, second = (cloth.estimate(lot, BoughtCloth(1120)) for lot in (pieces, pieces[::-1]))
    assert first.packed_mm == second.packed_mm


def test_packing_at_the_edge() -> None:
    """Boxes exactly as wide as the strip go in, and no boxes need no strip."""
    assert 30 == pack([Box(140, 10), Box(140, 20)], 140).length
    assert 0 == pack([], 140).length


def test_many_any_grain_kinds_still_fit() -> None:
    """With many any-grain kinds, long ones are laid along so that they fit."""
    pieces = [CutPiece(200 + 10 * step, 100, 1, any_grain=True) for step in range(5)]
    found = cloth.estimate(pieces, BoughtCloth(230))
    assert found.packed_mm >= found.least_mm


@pytest.mark.parametrize(
    ("call", "message"),
    [
        (lambda: cloth.estimate([], BoughtCloth(1400)), "no pieces"),
        (lambda: cloth.estimate([CutPiece(1500, 100)], BoughtCloth(1400)), "wider than the cloth"),
        (lambda: pack([Box(141, 10)], 140), "wider than the strip"),
        (lambda: CutPiece(-1, 100), "piece width"),
        (lambda: CutPiece(100, 0), "piece length"),
        (lambda: CutPiece(100, 100, 0), "pieces"),
        (lambda: CutPiece(100, 100, narrow_mm=120), "narrow end"),
        (lambda: BoughtCloth(0), "cloth width"),
        (lambda: BoughtCloth(100, selvage_mm=50), "selvages"),
        (lambda: BoughtCloth(100, shrinks_long=1.0), "shrinkage along"),
        (lambda: cloth.round_up_to_shop(100, 0), "selling step"),
    ],
)
def test_bad_numbers(call: Callable[[], object], message: str) -> None:
    """Each bad number gets a message that names it."""
    with pytest.raises(ValueError, match=message):
        call()

"""Unit tests of the cloth to buy, and packing against an exact solver."""

from __future__ import annotations

import random

import pytest
from ortools.sat.python import cp_model

from advisor.craft import cloth
from advisor.craft.cloth import Cloth, Piece
from advisor.craft.strip import GAP, Box, pack


def shortest(boxes: list[tuple[int, int]], across: int) -> int:
    """The shortest strip for some boxes, found and proved by a constraint solver."""
    model = cp_model.CpModel()
    most = sum(length for _, length in boxes)
    end = model.new_int_var(0, most, "end")
    wide, deep = [], []
    for place, (width, length) in enumerate(boxes):
        x = model.new_int_var(0, across - width, f"x{place}")
        y = model.new_int_var(0, most - length, f"y{place}")
        wide.append(model.new_fixed_size_interval_var(x, width, f"wide{place}"))
        deep.append(model.new_fixed_size_interval_var(y, length, f"deep{place}"))
        model.add(end >= y + length)
    model.add_no_overlap_2d(wide, deep)
    model.add_cumulative(deep, [width for width, _ in boxes], across)
    model.minimize(end)
    solver = cp_model.CpSolver()
    solver.parameters.num_workers = 1
    solver.parameters.max_time_in_seconds = 10
    assert cp_model.OPTIMAL == solver.solve(model)
    return round(solver.objective_value)


def test_packing_against_the_exact_answer():
    """On 2 to 9 boxes: never shorter than the proved optimum, at most GAP and 1 % on average."""
    over = []
    for seed in range(48):
        chance = random.Random(seed)
        boxes = [(chance.randint(8, 90), chance.randint(10, 110)) for _ in range(2 + seed % 8)]
        over.append(pack([Box(*box) for box in boxes], 140) / shortest(boxes, 140) - 1)
    assert min(over) >= -1e-9
    assert max(over) <= GAP
    assert sum(over) / len(over) <= 0.01


def test_any_grain_matches_the_exact_answer_over_both_ways():
    """An any-grain piece takes the better of its two ways, others keep theirs."""
    pieces = [Piece(60, 100, 2), Piece(90, 30, 1, any_grain=True), Piece(40, 50, 1)]
    ways = [
        shortest([(60, 100), (60, 100), turned, (40, 50)], 150) for turned in ((90, 30), (30, 90))
    ]
    assert min(ways) == pytest.approx(cloth.estimate(pieces, Cloth(150)).packed_mm)


def test_grain_is_locked():
    """A piece is never turned a quarter unless it allows any grain."""
    locked = cloth.estimate([Piece(300, 900)], Cloth(1000)).packed_mm
    free = cloth.estimate([Piece(300, 900, any_grain=True)], Cloth(1000)).packed_mm
    assert (900, 300) == (locked, free)


def test_nap_stops_turning_end_for_end():
    """Two flared panels share a width head to tail; with nap they need two lengths."""
    panel = Piece(800, 900, 2, narrow_mm=300)
    assert 900 == cloth.estimate([panel], Cloth(1350)).packed_mm
    assert 1800 == cloth.estimate([panel], Cloth(1349)).packed_mm
    assert 1800 == cloth.estimate([panel], Cloth(1400, one_way=True)).packed_mm


def test_shrinkage_repeat_and_selvage():
    """Shrinkage lengthens, each matched piece after the first adds a repeat, selvages narrow."""
    pieces = [Piece(700, 950, 2, matched=True)]
    assert 950 / 0.95 == pytest.approx(
        cloth.estimate([Piece(700, 950, 2)], Cloth(1400, shrinks_long=0.05)).length_mm
    )
    assert 950 + 320 == cloth.estimate(pieces, Cloth(1400, repeat_mm=320)).length_mm
    narrower = [Piece(695, 950, 2)]
    assert 950 == cloth.estimate(narrower, Cloth(1400, selvage_mm=5)).length_mm
    assert 1900 == cloth.estimate(narrower, Cloth(1400, selvage_mm=10)).length_mm
    assert 1900 == cloth.estimate(pieces, Cloth(1400, shrinks_wide=0.02)).length_mm


def test_result_says_that_it_is_an_estimate():
    """The result is marked, carries its bounds, and is rounded up both ways."""
    found = cloth.estimate([Piece(600, 1010, 2)], Cloth(1400))
    assert "estimate" == found.kind
    assert "estimate" in found.sources
    assert (1010, 1010) == (found.packed_mm, found.least_mm)
    assert (1100, 9 * cloth.US_STEP_MM) == pytest.approx((found.buy_metric_mm, found.buy_us_mm))
    assert 2 * 600 / 1400 == pytest.approx(found.used)


def test_rounding_up_keeps_an_exact_length():
    """A length that is sold as it stands is not rounded up."""
    assert 1100 == cloth.round_up_to_shop(1100)
    assert 1200 == cloth.round_up_to_shop(1100.5)
    assert 914.4 == pytest.approx(cloth.round_up_to_shop(914.4, cloth.US_STEP_MM))


def test_same_pieces_same_answer():
    """The order in which pieces are named does not matter, nor a second run."""
    pieces = [Piece(310, 640, 3), Piece(420, 380, 2), Piece(150, 900, 4), Piece(90, 90, 6)]
    first, second = (cloth.estimate(lot, Cloth(1120)) for lot in (pieces, pieces[::-1]))
    assert first.packed_mm == second.packed_mm


def test_packing_at_the_edge():
    """Boxes exactly as wide as the strip go in, and no boxes need no strip."""
    assert 30 == pack([Box(140, 10), Box(140, 20)], 140)
    assert 0 == pack([], 140)


def test_many_any_grain_kinds_still_fit():
    """With many any-grain kinds, long ones are laid along so that they fit."""
    pieces = [Piece(200 + 10 * step, 100, 1, any_grain=True) for step in range(5)]
    found = cloth.estimate(pieces, Cloth(230))
    assert found.packed_mm >= found.least_mm


@pytest.mark.parametrize(
    ("call", "message"),
    [
        (lambda: cloth.estimate([], Cloth(1400)), "no pieces"),
        (lambda: cloth.estimate([Piece(1500, 100)], Cloth(1400)), "wider than the cloth"),
        (lambda: pack([Box(141, 10)], 140), "wider than the strip"),
        (lambda: Piece(-1, 100), "piece width"),
        (lambda: Piece(100, 0), "piece length"),
        (lambda: Piece(100, 100, 0), "pieces"),
        (lambda: Piece(100, 100, narrow_mm=120), "narrow end"),
        (lambda: Cloth(0), "cloth width"),
        (lambda: Cloth(100, selvage_mm=50), "selvages"),
        (lambda: Cloth(100, shrinks_long=1.0), "shrinkage along"),
        (lambda: cloth.round_up_to_shop(100, 0), "selling step"),
    ],
)
def test_bad_numbers(call, message):
    """Each bad number gets a message that names it."""
    with pytest.raises(ValueError, match=message):
        call()

"""Laws of the cloth to buy: never short, near the proved shortest, and more never needs less.

With `ADVISOR_ALL_LOTS` set all 500 random lots are solved; else 60 of the same row.
"""

from __future__ import annotations

import os
import random
from collections import Counter

from hypothesis import assume, given, settings
from hypothesis import strategies as st
from msgspec.structs import replace

from advisor.craft import cloth, skyline, strip
from advisor.craft.cloth import BoughtCloth, CutPiece
from advisor.craft.strip import Box, pack
from tests.lay_oracle import Lot, shortest

LOTS = 500 if os.environ.get("ADVISOR_ALL_LOTS") else 60
SURPLUS = 0.04
"""Mean of what a lay may take over the proved shortest."""
OVER = 0.09
"""The most that one lot may. Of the 500, 483 were proved: 0.3 % over on average, at most 7.6 %."""
ROUNDED = 1.5
"""The oracle rounds bias pieces down to tenths, and so may fall short by this, mm."""
KINDS = ("upright", "any grain", "bias", "bias among others", "matched", "folded")


def lot(seed: int) -> tuple[list[CutPiece], BoughtCloth, list[Lot], int]:
    """One random lot: for us as pieces and cloth, for the oracle as boxes and width (all in cm)."""
    chance = random.Random(seed)
    kind = KINDS[seed % len(KINDS)]
    slanted = kind.startswith("bias")
    sizes = [
        (chance.randint(8, 60), chance.randint(10, 70 if slanted else 110))
        for _ in range(2 + (seed // len(KINDS)) % (4 if slanted else 7))
    ]
    bias = [kind == "bias" or (slanted and chance.random() < 0.5) for _ in sizes]
    turns, step = kind == "any grain", 30 if kind == "matched" else 0
    if kind == "folded":
        return _folded(sizes)
    pieces = [
        CutPiece(w, h, bias=on, any_grain=turns, matched=bool(step))
        for (w, h), on in zip(sizes, bias, strict=True)
    ]
    lots = [Lot(w, h, turns, on, step) for (w, h), on in zip(sizes, bias, strict=True)]
    return pieces, BoughtCloth(140, repeat_mm=step), lots, 140


def _folded(sizes: list[tuple[int, int]]) -> tuple[list[CutPiece], BoughtCloth, list[Lot], int]:
    """Pairs of each, and one of the first on the fold; on the half width."""
    (w, h), *others = sizes
    odd = CutPiece(2 * w, h)
    pieces = [odd, *(CutPiece(wide, long, 2) for wide, long in others)]
    lots = [Lot(w, h, at_fold=True), *(Lot(wide, long) for wide, long in others)]
    return pieces, BoughtCloth(150), lots, 75


def test_never_short_and_seldom_much_too_long() -> None:
    """Against the proved shortest lay: never below it, 4 % over on average at most."""
    over = []
    for seed in range(LOTS):
        pieces, width, lots, across = lot(seed)
        best, proved = shortest(lots, across, 4.0)
        folded = lots[0].at_fold
        if folded and lots[1:]:
            # The odd piece may also be cut from the opened cloth behind the pairs.
            pairs, sure = shortest(lots[1:], across, 4.0)
            best, proved = min(best, pairs + lots[0].length), proved and sure
        if not proved:
            continue
        found = cloth.estimate(pieces, width, folded=folded).packed_mm
        slack = ROUNDED if any(each.bias for each in lots) else 1e-6
        assert found >= best - slack, (seed, found, best)
        over.append(found / best - 1)
    assert len(over) >= 0.8 * LOTS
    assert sum(over) / len(over) <= SURPLUS
    assert max(over) <= OVER


few = st.builds(
    CutPiece,
    width_mm=st.integers(50, 700),
    length_mm=st.integers(50, 1100),
    any_grain=st.booleans(),
)
few_pieces = st.lists(few, min_size=1, max_size=4)
widths = st.integers(1110, 1500)
MANY = settings(max_examples=60, deadline=None)


def length(pieces: list[CutPiece], width: BoughtCloth) -> float:
    """What is bought of a cloth, mm."""
    return cloth.estimate(pieces, width).length_mm


@MANY
@given(few_pieces, widths, st.integers(0, 300), st.integers(0, 300), st.integers(0, 3))
def test_a_larger_piece_never_needs_less(
    pieces: list[CutPiece], width: float, wider: float, longer: float, which: int
) -> None:
    """Longer, wider, or one more of it: never less cloth."""
    place = which % len(pieces)
    piece = replace(pieces[place], any_grain=False)
    base = length([*pieces[:place], piece, *pieces[place + 1 :]], BoughtCloth(width))
    grown = replace(
        piece, width_mm=min(piece.width_mm + wider, 1100), length_mm=piece.length_mm + longer
    )
    more = length([*pieces[:place], grown, *pieces[place + 1 :]], BoughtCloth(width))
    assert more >= base - 1e-6
    assert (
        length([*pieces, pieces[0]], BoughtCloth(width))
        >= length(pieces, BoughtCloth(width)) - 1e-6
    )


@MANY
@given(few_pieces, widths, st.integers(0, 300))
def test_narrower_cloth_never_needs_less(pieces: list[CutPiece], width: float, more: float) -> None:
    """What a wide cloth needs, a narrower one needs too."""
    assert length(pieces, BoughtCloth(width)) >= length(pieces, BoughtCloth(width + more)) - 1e-6


@MANY
@given(few_pieces, st.floats(0, 0.1), st.floats(0, 0.1), st.floats(0, 0.1))
def test_more_shrinkage_never_needs_less(
    pieces: list[CutPiece], along: float, across: float, extra: float
) -> None:
    """Along the cloth or across it."""
    base = BoughtCloth(1500, shrinks_long=along, shrinks_wide=across)
    longer, narrower = (
        replace(base, shrinks_long=along + extra),
        replace(base, shrinks_wide=across + extra),
    )
    assert length(pieces, longer) >= length(pieces, base) - 1e-6
    assert length(pieces, narrower) >= length(pieces, base) - 1e-6


@MANY
@given(few_pieces, st.integers(0, 40), st.integers(0, 40))
def test_selvages_and_ends_never_save_cloth(
    pieces: list[CutPiece], selvage: float, ends: float
) -> None:
    """What is left out at the edges is bought on top."""
    base, less = BoughtCloth(1500), BoughtCloth(1500, selvage_mm=selvage, ends_mm=ends)
    assert length(pieces, less) >= length(pieces, base) + ends - 1e-6


@MANY
@given(few_pieces, widths)
def test_units_do_not_matter(pieces: list[CutPiece], width: float) -> None:
    """The same lot in inches takes the same length in inches.

    But where it fits to a hair: there the last digit decides, to the side of more cloth.
    """
    hair = length(pieces, BoughtCloth(width * (1 - 1e-9)))
    assume(hair == length(pieces, BoughtCloth(width)))
    inches = [replace(p, width_mm=p.width_mm / 25.4, length_mm=p.length_mm / 25.4) for p in pieces]
    metric, us = length(pieces, BoughtCloth(width)), length(inches, BoughtCloth(width / 25.4))
    assert abs(metric - us * 25.4) < 0.05


@MANY
@given(few_pieces, widths)
def test_both_ways_of_selling_hold_the_length(pieces: list[CutPiece], width: float) -> None:
    """Rounded up by less than one step, and never below what is needed beyond a hair."""
    found = cloth.estimate(pieces, BoughtCloth(width))
    for bought, step in (
        (found.buy_metric_mm, cloth.METRIC_STEP_MM),
        (found.buy_us_mm, cloth.US_STEP_MM),
    ):
        assert found.length_mm - cloth.SAME_MM <= bought < found.length_mm + step


@given(st.integers(0, 10_000), st.integers(strip.MANY, 300))
@settings(max_examples=15)
def test_very_many_pieces_lie_side_by_side_and_little_is_lost(seed: int, number: int) -> None:
    """Where no hole is looked for nothing overlaps, and the area is used well (geometry).

    A matched one begins at a multiple of its repeat, one on the fold at the edge.
    """
    chance = random.Random(seed)
    boxes = [
        Box(
            chance.randint(20, 600),
            chance.randint(20, 900),
            step=160.0 if chance.random() < 0.05 else 0.0,
            at_edge=chance.random() < 0.05,
        )
        for _ in range(number)
    ]
    laid = pack(boxes, 1400.0)
    assert len(laid.places) == number
    sizes = Counter((p.width, p.length) for p in laid.places)
    assert sizes == Counter((box.width, box.length) for box in boxes)
    folded = Counter((box.width, box.length) for box in boxes if box.at_edge)
    assert folded <= Counter((p.width, p.length) for p in laid.places if p.x < 0.01)
    matched = Counter((box.width, box.length) for box in boxes if box.step)
    assert matched <= Counter((p.width, p.length) for p in laid.places if p.y % 160 < 0.01)
    assert all(p.x >= 0 and p.x + p.width <= 1400.01 for p in laid.places)
    assert all(p.y >= 0 and p.y + p.length <= laid.length + 0.01 for p in laid.places)
    for i, one in enumerate(laid.places):
        for other in laid.places[i + 1 :]:
            across = one.x < other.x + other.width - 0.01 and other.x < one.x + one.width - 0.01
            along = one.y < other.y + other.length - 0.01 and other.y < one.y + one.length - 0.01
            assert not (across and along), (one, other)
    area = sum(box.width * box.length for box in boxes)
    assert area / 1400.0 <= laid.length <= 1.3 * area / 1400.0 + 900.0


def test_very_many_pieces_give_up_once_they_are_as_long_as_a_shorter_strip() -> None:
    """Another order is only worth its end where it stays below what was found."""
    chance = random.Random(7)
    boxes = [Box(chance.randint(20, 600), chance.randint(20, 900)) for _ in range(200)]
    items = tuple(strip._item(box, 1400 * strip.FINE, 1400.0) for box in boxes)
    whole = skyline.lay(1400 * strip.FINE, items, None)
    assert whole is not None
    assert skyline.lay(1400 * strip.FINE, items, whole[0]) is None
    assert whole == skyline.lay(1400 * strip.FINE, items, whole[0] + 1)


def test_many_pieces_lie_close() -> None:
    """Twelve lots of 18 to 21 pieces: 11 % over their bare area, or the longest, on average."""
    over = []
    for seed in range(12):
        chance, boxes = random.Random(seed), list[Box]()
        while len(boxes) < 18:
            box = Box(chance.randint(50, 400), chance.randint(50, 900))
            boxes += [box] * chance.choice((1, 2, 2, 4))
        area = sum(box.width * box.length for box in boxes) / 1400
        bare = max(area, *(box.length for box in boxes))
        over.append(pack(boxes, 1400.0).length / bare - 1)
    assert sum(over) / len(over) <= 0.11

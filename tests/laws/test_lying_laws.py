"""Laws of the lay that is drawn: all pieces are there, none overlap, none leave their cloth."""

from __future__ import annotations

import random
from itertools import combinations

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from advisor.craft import cloth
from advisor.craft.checks import TooWideError
from advisor.craft.cloth import BoughtCloth, CutPiece
from advisor.craft.lying import FOLD, Lies, Outline, lying

SLACK = 0.01
"""What the whole numbers of the packing may be off, mm."""
KINDS = (
    "upright",
    "any grain",
    "bias",
    "bias among others",
    "matched",
    "tapered",
    "joined",
    "pieced",
)


def lot(seed: int) -> tuple[list[CutPiece], BoughtCloth]:
    """Two to four kinds of pieces of one lot, one to three of each."""
    chance = random.Random(seed)
    kind = KINDS[seed % len(KINDS)]
    found: list[CutPiece] = []
    for _ in range(chance.randint(2, 4)):
        wide, long = chance.randint(60, 420), chance.randint(80, 700)
        if kind == "pieced" and len(found) < 2:
            wide, long = chance.randint(210, 600), chance.randint(1300, 2600)
            found.append(CutPiece(wide, long, bias=True, joined=True, seam_mm=15))
            continue
        slanted = kind == "bias" or (kind == "bias among others" and chance.random() < 0.5)
        found.append(
            CutPiece(
                wide,
                long if not slanted else min(long, 400),
                chance.randint(1, 3),
                any_grain=kind == "any grain" and chance.random() < 0.7,
                narrow_mm=chance.randint(0, wide) if kind == "tapered" else None,
                matched=kind == "matched" and chance.random() < 0.7,
                bias=slanted or (kind == "joined" and not found),
                joined=kind == "joined" and not found,
            )
        )
    one_way = chance.random() < 0.3
    return found, BoughtCloth(1400, one_way=one_way, repeat_mm=130 if kind == "matched" else 0)


def area(outline: Outline) -> float:
    """By the corners, one after another, mm2."""
    turned = [*outline[1:], outline[0]]
    return abs(sum(a * d - c * b for (a, b), (c, d) in zip(outline, turned, strict=True))) / 2


def apart(one: Outline, other: Outline) -> bool:
    """Whether some side of two convex outlines parts them (separating axis theorem)."""
    for shape in (one, other):
        for (a, b), (c, d) in zip(shape, [*shape[1:], shape[0]], strict=True):
            along, up = d - b, a - c
            size = (along**2 + up**2) ** 0.5
            if size == 0:
                continue
            first = [(x * along + y * up) / size for x, y in one]
            then = [(x * along + y * up) / size for x, y in other]
            if max(first) <= min(then) + SLACK or max(then) <= min(first) + SLACK:
                return True
    return False


def hold_kind(own: list[Lies], piece: CutPiece, sold: BoughtCloth) -> None:
    """All of one kind are there, each as large as it is, and matched ones begin at a repeat."""
    parts = sum(one.number for one in own)
    assert piece.count == parts or (piece.joined and piece.count < parts)
    for one in own:
        share = 0.5 if one.way == FOLD else 1.0
        for outline in () if piece.joined else one.outlines:
            assert area(outline) == pytest.approx(piece.area_mm2 * share, rel=1e-3)
        if piece.matched:
            assert min(one.y % sold.step_mm, -one.y % sold.step_mm) < SLACK


def hold_inside(one: Lies, sold: BoughtCloth) -> None:
    """No corner leaves the cloth, or the half of it that a fold leaves."""
    room = sold.usable_mm / (2 if one.folded else 1)
    for x, y in (corner for outline in one.outlines for corner in outline):
        assert -SLACK <= x <= room + SLACK
        assert one.y - SLACK <= y <= one.y + one.along + SLACK


@pytest.mark.parametrize("folded", [False, True])
def test_all_pieces_lie_on_the_cloth_and_none_on_another(folded: bool) -> None:
    """For lots of every kind, open and folded: numbers, areas, edges, repeats, and no overlap."""
    for seed in range(32):
        pieces, sold = lot(seed)
        if folded and any(p.matched or p.bias for p in pieces):
            continue
        found = cloth.estimate(pieces, sold, folded=folded)
        laid = lying(found.laid, pieces)
        assert found.packed_mm == pytest.approx(max(o.y + o.along for o in laid), abs=SLACK)
        for number, piece in enumerate(pieces):
            hold_kind([one for one in laid if one.piece == number], piece, sold)
        for one in laid:
            hold_inside(one, sold)
        shapes = [outline for one in laid for outline in one.outlines]
        assert all(apart(one, other) for one, other in combinations(shapes, 2)), seed


def test_the_check_sees_an_overlap() -> None:
    """Two outlines that share more than an edge are not apart; two that only touch are."""
    square: Outline = ((0, 0), (10, 0), (10, 10), (0, 10))
    tilted: Outline = ((12, 2), (20, 10), (12, 18), (4, 10))
    beside: Outline = ((10, 0), (20, 0), (20, 10), (10, 10))
    assert not apart(square, tilted)
    assert apart(square, beside)


def uneven(low: float, high: float) -> st.SearchStrategy[float]:
    """Numbers with no end of digits, as shrinking makes them."""
    return st.integers(int(low * 97), int(high * 97)).map(lambda n: n / 97)


@settings(max_examples=60, deadline=None)
@given(
    st.lists(
        st.tuples(
            uneven(60, 420), uneven(80, 1500), st.integers(1, 4), st.booleans(), st.booleans()
        ),
        min_size=1,
        max_size=4,
    ),
    uneven(300, 1600),
    uneven(20, 400),
    st.floats(0, 0.1),
)
def test_pieces_of_any_size_lie_on_a_cloth_whose_repeat_shrinks(
    said: list[tuple[float, float, int, bool, bool]], width: float, repeat: float, shrinks: float
) -> None:
    """No size, repeat or shrinkage is so uneven that a piece is lost or lies elsewhere."""
    pieces = [CutPiece(w, h, n, any_grain=turns, matched=on) for w, h, n, turns, on in said]
    sold = BoughtCloth(width, repeat_mm=repeat, shrinks_long=shrinks, shrinks_wide=shrinks / 2)
    try:
        found = cloth.estimate(pieces, sold)
    except TooWideError:
        assert max(piece.across_mm for piece in pieces) > sold.usable_mm
        return
    own = lying(found.laid, pieces)
    for number, piece in enumerate(pieces):
        hold_count([one for one in own if one.piece == number], piece, sold)
    for one, other in combinations(own, 2):
        assert all(apart(a, b) for a in one.outlines for b in other.outlines)


def hold_count(own: list[Lies], piece: CutPiece, sold: BoughtCloth) -> None:
    """All of one kind are there and inside; matched ones begin at a repeat, to a tenth of a mm."""
    assert piece.count == sum(one.number for one in own)
    for one in own:
        hold_inside(one, sold)
        if piece.matched:
            assert min(one.y % sold.step_mm, -one.y % sold.step_mm) < 0.1


def test_a_piece_as_wide_as_the_cloth_fits_it() -> None:
    """In ninety-sevenths of a mm as well, which no whole number of ten-thousandths is."""
    wide = 29101 / 97
    pieces = [CutPiece(wide, 80.0), CutPiece(60.0, 80.0, 3)]
    found = cloth.estimate(pieces, BoughtCloth(wide))
    assert 4 == sum(one.number for one in lying(found.laid, pieces))


def test_a_plaid_in_inches_is_laid_and_told() -> None:
    """A repeat of 2 1/4 in that shrinks by 3.5 %: an odd number of mm, over and over."""
    plaid = BoughtCloth(1143, repeat_mm=57.15, selvage_mm=10, shrinks_long=0.035, ends_mm=15)
    pieces = [CutPiece(792.2, 850.9, 1, matched=True) for _ in range(2)]
    pieces.append(CutPiece(792.2, 596.9, 2, matched=True))
    found = cloth.estimate(pieces, plaid)
    assert 4 == sum(one.number for one in lying(found.laid, pieces))


def test_a_matched_piece_that_fits_only_turned_is_refused_as_too_wide() -> None:
    """Its pattern has to meet, so it cannot turn, and that is told in the width that it spans."""
    wide = CutPiece(880, 620, any_grain=True, matched=True)
    with pytest.raises(TooWideError):
        cloth.estimate([wide], BoughtCloth(730, repeat_mm=70))

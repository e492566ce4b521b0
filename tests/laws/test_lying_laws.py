"""Laws of the lay that is drawn: all pieces are there, none overlap, none leave their cloth."""

from __future__ import annotations

import random
from itertools import combinations

import pytest

from advisor.craft import cloth
from advisor.craft.cloth import BoughtCloth, CutPiece
from advisor.craft.lying import FOLD, Lies, Outline, lying

SLACK = 0.01
"""What the whole numbers of the packing may be off, mm."""
KINDS = ("upright", "any grain", "bias", "bias among others", "matched", "tapered", "joined")


def lot(seed: int) -> tuple[list[CutPiece], BoughtCloth]:
    """Two to four kinds of pieces of one lot, one to three of each."""
    chance = random.Random(seed)
    kind = KINDS[seed % len(KINDS)]
    found: list[CutPiece] = []
    for _ in range(chance.randint(2, 4)):
        wide, long = chance.randint(60, 420), chance.randint(80, 700)
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
    assert piece.count == sum(one.number for one in own)
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
    for seed in range(28):
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

"""Unit tests of pleats."""

from __future__ import annotations

from collections.abc import Callable

import pytest

from advisor.craft import pleats
from advisor.craft.pleats import Pleat


@pytest.mark.parametrize(
    ("kind", "cut"),
    [
        (Pleat.KNIFE, 10 * (3 + 2 * 1 + 0.5)),
        (Pleat.BOX, 10 * (3 + 4 * 1 + 0.5)),
        (Pleat.INVERTED, 10 * (3 + 4 * 1 + 0.5)),
    ],
)
def test_cut_widths(kind: Pleat, cut: float) -> None:
    """A knife pleat takes two folds' depth, a box or inverted one four."""
    row = pleats.pleats(kind, 10, 3, 1, spacing=0.5)
    assert (cut, 35) == pytest.approx((row.cut, row.finished))
    assert cut / 35 == pytest.approx(row.ratio)
    assert not row.touching


def test_spacing_gives_room_for_a_deeper_fold() -> None:
    """Flat cloth between pleats lets the folds go as much deeper; knife pleats overlap."""
    assert 4 * pleats.OVERLAPS == pleats.deepest(Pleat.KNIFE, 3, 1)
    assert 2 == pleats.deepest(Pleat.BOX, 3, 1)


def test_taper_takes_up_more_at_the_waist() -> None:
    """8 pleats from hip 96 to waist 72 take up 3 more each."""
    assert 11 == tapered(8)
    assert 8 == pleats.tapered_take_up(8, 90, 90, 8)


def tapered(take_up: float) -> float:
    """Take-up at the waist of the example."""
    return pleats.tapered_take_up(take_up, 96, 72, 8)


@pytest.mark.parametrize(
    ("kind", "face", "depth", "plies"),
    [
        (Pleat.KNIFE, 4.5, 4.0, 3),
        (Pleat.KNIFE, 4.0, 4.0, 3),
        (Pleat.KNIFE, 3.0, 4.5, 5),
        (Pleat.KNIFE, 1.75, 8.0, 11),
        (Pleat.BOX, 6.0, 3.0, 3),
    ],
)
def test_plies_where_folds_lie_on_one_another(
    kind: Pleat, face: float, depth: float, plies: int
) -> None:
    """A fold has three; a knife pleat over its neighbour has two more (derived: geometry)."""
    assert pleats.layers(kind, face, depth) == plies


def test_a_kilt_takes_what_its_overlapping_pleats_take() -> None:
    """Cut width = finished + 2 x depth x number, however far they overlap (geometry)."""
    found = pleats.pleats(Pleat.KNIFE, 24, 1.75, 7.0)
    assert found.cut == pytest.approx(24 * 1.75 + 2 * 7.0 * 24)
    assert found.touching


@pytest.mark.parametrize(
    ("call", "message"),
    [
        (lambda: pleats.pleats(Pleat.KNIFE, 8, 3, 12.5), "deeper than its spacing allows"),
        (lambda: pleats.pleats(Pleat.BOX, 8, 3, 1.6), "deeper than its spacing allows"),
        (lambda: pleats.pleats(Pleat.KNIFE, 0, 3, 1), "number of pleats"),
        (lambda: pleats.pleats(Pleat.KNIFE, 8, 3, 0), "fold depth"),
        (lambda: pleats.pleats(Pleat.KNIFE, 8, 3, 1, spacing=-1), "spacing"),
        (lambda: pleats.pitch(2, 7, 3), "leaves nothing"),
        (lambda: pleats.tapered_take_up(1, 60, 100, 8), "cannot let out"),
    ],
)
def test_bad_numbers(call: Callable[[], object], message: str) -> None:
    """Each bad number gets a message that names it."""
    with pytest.raises(ValueError, match=message):
        call()

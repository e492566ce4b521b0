"""Unit tests of thread consumption and sizes."""

from __future__ import annotations

from collections.abc import Callable

import pytest

from advisor.craft import thread, threadsize
from advisor.units.factors import us_size


def test_lockstitch_splits_evenly() -> None:
    """Needle and bobbin of a lockstitch share alike, and there is no looper."""
    use = thread.lockstitch(1.0, 2.5)
    assert (use.needle, 0) == (use.bobbin, use.looper)


def test_straight_zigzag_is_a_lockstitch() -> None:
    """A zigzag of no width is a lockstitch."""
    zigzag, straight = thread.zigzag(0.8, 2.5, 0), thread.lockstitch(0.8, 2.5)
    assert straight.total == pytest.approx(zigzag.total)


def test_overedge_goes_by_the_formula_when_its_width_is_known() -> None:
    """Width known: the larger formula; unknown: the table."""
    assert 15.8 == pytest.approx(thread.ratio(504, 1, 10 / 4.5, 5).total)
    assert 14.0 == pytest.approx(thread.ratio(504, 1, 10 / 4.5).total)


def test_table_use_keeps_its_sources() -> None:
    """A ratio by the table names the table."""
    assert thread.TABLE[406].sources == thread.ratio(406, 1, 2.5).sources


def test_total_keeps_threads_apart_and_adds_wastage() -> None:
    """Two seams add thread by thread, 15 % on each."""
    both = thread.total([thread.ThreadUse(10, bobbin=10), thread.ThreadUse(4, looper=16)])
    assert (16.1, 11.5, 18.4) == pytest.approx((both.needle, both.bobbin, both.looper))


def test_nothing_to_sew() -> None:
    """No seams take no thread and no reel."""
    assert 0 == thread.total([]).total
    assert 0 == thread.reels(0, 100)


def test_reels() -> None:
    """Exactly one reel is one, a trace more is two."""
    assert (1, 2) == (thread.reels(100, 100), thread.reels(100.1, 100))


def test_gathering_rows_count_both_threads_and_tails() -> None:
    """Two rows on a metre: needle and bobbin each 2 × (1 m + tails)."""
    use = thread.gathering_rows(1000, 2)
    assert 2 * (1000 + 2 * thread.TAIL_MM) == pytest.approx(use.needle)
    assert use.needle == use.bobbin


def test_basting_rises_and_falls() -> None:
    """A running stitch of 10 mm through 1 mm takes 1.2 times its length, and tails."""
    assert 1200 + 2 * thread.TAIL_MM == pytest.approx(thread.hand_basting(1000, 10, 1).total)


def test_sold_needle_and_its_us_number() -> None:
    """A 27 tex thread takes NM 70, US 10."""
    assert (70, 10) == (threadsize.needle_sold(27), us_size(70))


@pytest.mark.parametrize(
    ("call", "message"),
    [
        (lambda: thread.ratio(999, 1, 2.5), "no thread ratio for stitch 999"),
        (lambda: thread.ratio(304, 1, 2.5), "needs its width"),
        (lambda: thread.ratio(301, -1, 2.5), "seam thickness"),
        (lambda: thread.ratio(503, -1, 2.5), "seam thickness"),
        (lambda: thread.ratio(301, 1, 0), "stitch length"),
        (lambda: thread.total([], -0.1), "wastage"),
        (lambda: thread.gathering_rows(100, 0), "rows"),
        (lambda: thread.reels(10, 0), "thread on a reel"),
        (lambda: threadsize.diameter(0), "tex"),
    ],
)
def test_bad_numbers(call: Callable[[], object], message: str) -> None:
    """Each bad number gets a message that names it."""
    with pytest.raises(ValueError, match=message):
        call()

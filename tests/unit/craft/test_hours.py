"""What a job will take out of earlier ones, against the integral itself on a grid."""

from __future__ import annotations

import math

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from advisor.craft.hours import BELIEF, SCATTER, ratio_of

RATIOS = st.lists(st.floats(0.2, 5.0), max_size=6)


def by_integral(done: list[float]) -> tuple[float, float, float]:
    """The 10th, 50th and 90th of a hundred next jobs: belief times likelihood, summed up."""
    own = np.std(np.log(done), ddof=1) if len(done) > 1 else 0.0
    scatter = max(SCATTER, float(own))
    mean = np.linspace(-5.0, 5.0, 4001)
    weight = np.exp(-(mean**2) / (2 * BELIEF**2))
    for one in done:
        weight *= np.exp(-((math.log(one) - mean) ** 2) / (2 * scatter**2))
    weight /= weight.sum()
    job = np.linspace(-6.0, 6.0, 1201)
    spread = np.exp(-((job[:, None] - mean) ** 2) / (2 * scatter**2)) @ weight
    summed = np.cumsum(spread) / spread.sum()
    low, middle, high = (float(np.exp(np.interp(p, summed, job))) for p in (0.1, 0.5, 0.9))
    return low, middle, high


@pytest.mark.parametrize(
    "done", [[], [1.5], [2.0, 2.2, 1.9], [0.6, 2.4], [1.1] * 12], ids=lambda d: f"{len(d)} jobs"
)
def test_the_ratio_is_that_of_the_integral(done: list[float]) -> None:
    """The closed rule and the integral agree within a hundredth."""
    found = ratio_of(done)
    assert by_integral(done) == pytest.approx((found.low, found.likely, found.high), rel=0.01)


def test_before_any_job_the_estimate_stands_with_a_wide_range() -> None:
    """Nothing is known: as reckoned, from little over half to nearly twice."""
    found = ratio_of([])
    assert (1.0, 0) == (found.likely, found.jobs)
    assert pytest.approx(1.0) == found.low * found.high
    assert 1.6 < found.high < 2.0


@given(RATIOS, st.floats(1.0, 2.0))
def test_who_takes_longer_is_told_longer(done: list[float], more: float) -> None:
    """If every finished job had taken longer, the next is expected to take no less."""
    assert ratio_of(done).likely <= ratio_of([one * more for one in done]).likely + 1e-12


@given(RATIOS)
def test_the_ends_hold_the_middle(done: list[float]) -> None:
    """Low, likely and high stand in order, and the order of the jobs does not matter."""
    found = ratio_of(done)
    assert 0 < found.low < found.likely < found.high
    assert found.likely == pytest.approx(ratio_of(done[::-1]).likely)


def test_jobs_alike_narrow_the_range() -> None:
    """The more jobs that took as long, the nearer the ends."""
    few, many = ratio_of([1.5] * 2), ratio_of([1.5] * 20)
    assert many.high / many.low < few.high / few.low
    assert pytest.approx(1.5, rel=0.03) == many.likely


def test_a_job_of_no_time_is_refused() -> None:
    """A ratio of 0 is no job."""
    with pytest.raises(ValueError, match="finished garment"):
        ratio_of([0.0])

"""What a job will take, out of what it is reckoned at and how earlier jobs came out.

Each finished garment gives a ratio, hours taken over hours reckoned. The logarithm of her own
ratio is taken as normal about 0 with deviation `BELIEF` before anything is known, and one job
about that ratio with deviation `SCATTER` (both `estimate`), or with what her own jobs scatter
where that is more. The rest is the conjugate rule for a normal mean of known variance
(`conjugate-normal`): weight of n jobs n / s², of the belief 1 / b², the mean weighted by these;
a new job scatters by the variance left and that of one job together. The range holds about 8 of
10 jobs (`EIGHT_IN_TEN` deviations each way) if these guesses are right; nothing here was measured
on makers. Checked against the integral itself on a grid.
"""

from __future__ import annotations

import math
from collections.abc import Sequence
from typing import Final

from msgspec import Struct

from advisor.craft import checks

SOURCES: Final[tuple[str, ...]] = ("conjugate-normal", "estimate")
BELIEF: Final = math.log(1.5)
SCATTER: Final = math.log(1.25)
EIGHT_IN_TEN: Final = 1.2816
"""The normal quantile of 0.9 (`derived`)."""


class PaceRatio(Struct, frozen=True):
    """What hours reckoned are multiplied by: likely, and the ends that 8 of 10 jobs lie between."""

    low: float
    likely: float
    high: float
    jobs: int


def ratio_of(done: Sequence[float]) -> PaceRatio:
    """The ratio for the next job, out of the ratios of those that are finished.

    Raises ValueError where one of them is not above 0.
    """
    logs = [math.log(checks.above("ratio of a finished garment", one)) for one in done]
    count = len(logs)
    mean = sum(logs) / count if count else 0.0
    own = math.sqrt(sum((x - mean) ** 2 for x in logs) / (count - 1)) if count > 1 else 0.0
    scatter = max(SCATTER, own)
    weight = count / scatter**2
    left = 1.0 / (weight + 1.0 / BELIEF**2)
    middle = mean * weight * left
    wide = EIGHT_IN_TEN * math.sqrt(left + scatter**2)
    return PaceRatio(math.exp(middle - wide), math.exp(middle), math.exp(middle + wide), count)

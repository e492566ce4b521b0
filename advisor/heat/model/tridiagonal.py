"""Many small tridiagonal systems at once, by cyclic reduction: each as it would come out alone."""

from __future__ import annotations

import numpy as np

from advisor.heat.model.grid import Floats


def solve_tridiagonal(lower: Floats, main: Floats, upper: Floats, right: Floats) -> Floats:
    """The solutions (B, N) of B tridiagonal systems; ``lower`` and ``upper`` are (B, N-1).

    Without a search for pivots, so ``main`` is to outweigh its neighbours in each row.
    """
    none = np.zeros((1, main.shape[0]))
    under, over = np.concatenate([none, lower.T]), np.concatenate([upper.T, none])
    return np.ascontiguousarray(_halved(under, main.T, over, right.T).T)


def _halved(lower: Floats, main: Floats, upper: Floats, right: Floats) -> Floats:
    """Every second unknown is put in terms of its neighbours; the others are half as many.

    Arrays (N, B), the first of ``lower`` and the last of ``upper`` being nothing.
    """
    size = len(main)
    if size == 1:
        return np.asarray(right / main, dtype=np.float64)
    below, above, known = (x[::2] / main[::2] for x in (lower, upper, right))
    left, wide = lower[1::2], upper[1::2]
    odd, paired = size // 2, (size - 1) // 2  # of the odd ones, all but a last one have a right
    centre = main[1::2] - left * above[:odd]
    centre[:paired] -= wide[:paired] * below[1:]
    rest = right[1::2] - left * known[:odd]
    rest[:paired] -= wide[:paired] * known[1:]
    far = np.zeros_like(wide)
    far[:paired] = -wide[:paired] * above[1:]
    solved = np.empty_like(right)
    solved[1::2] = found = _halved(-left * below[:odd], centre, far, rest)
    known[:odd] -= above[:odd] * found
    known[1:] -= below[1:] * found[:paired]
    solved[::2] = known
    return solved

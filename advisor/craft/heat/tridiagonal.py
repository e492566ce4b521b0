"""Many small tridiagonal systems at once: a full solve for few, a sweep for many."""

from __future__ import annotations

import numpy as np

from advisor.craft.heat.grid import Floats

SWEEP_FROM = 150  # cases from which sweeping through the cells beats a full solve


def solve_tridiagonal(lower: Floats, main: Floats, upper: Floats, right: Floats) -> Floats:
    """The solutions (B, N) of B tridiagonal systems; ``lower`` and ``upper`` are (B, N-1)."""
    cases, size = main.shape
    if cases < SWEEP_FROM:
        matrix = np.zeros((cases, size, size))
        here = np.arange(size)
        matrix[:, here, here] = main
        matrix[:, here[1:], here[:-1]] = lower
        matrix[:, here[:-1], here[1:]] = upper
        return np.asarray(np.linalg.solve(matrix, right[:, :, None])[:, :, 0], dtype=np.float64)
    return _sweep(lower.T.copy(), main.T.copy(), upper.T.copy(), right.T.copy())


def _sweep(lower: Floats, main: Floats, upper: Floats, right: Floats) -> Floats:
    """Elimination downwards and substitution upwards, arrays (N, B), many cases at once."""
    for cell in range(1, main.shape[0]):
        factor = lower[cell - 1] / main[cell - 1]
        main[cell] -= factor * upper[cell - 1]
        right[cell] -= factor * right[cell - 1]
    right[-1] /= main[-1]
    for cell in range(main.shape[0] - 2, -1, -1):
        right[cell] = (right[cell] - upper[cell] * right[cell + 1]) / main[cell]
    return np.ascontiguousarray(right.T)

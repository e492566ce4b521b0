"""Many small tridiagonal systems at once: a few one after the other, many by cyclic reduction."""

from __future__ import annotations

import numpy as np

from advisor.heat.model.grid import Floats

HALVE_FROM = 8  # cases from which cyclic reduction beats one after the other


def solve_tridiagonal(lower: Floats, main: Floats, upper: Floats, right: Floats) -> Floats:
    """The solutions (B, N) of B tridiagonal systems; ``lower`` and ``upper`` are (B, N-1).

    Without a search for pivots, so ``main`` is to outweigh its neighbours in each row.
    """
    if len(main) < HALVE_FROM:
        systems = zip(lower.tolist(), main.tolist(), upper.tolist(), right.tolist(), strict=True)
        return np.array([_swept(*system) for system in systems])
    none = np.zeros((1, main.shape[0]))
    under, over = np.concatenate([none, lower.T]), np.concatenate([upper.T, none])
    return np.ascontiguousarray(_halved(under, main.T, over, right.T).T)


def _swept(
    lower: list[float], main: list[float], upper: list[float], right: list[float]
) -> list[float]:
    """One system by elimination downwards and back: plain numbers, so no call into numpy."""
    pivot, known = main[0], right[0]
    pivots, knowns = [pivot], [known]
    for below, centre, above, given in zip(lower, main[1:], upper, right[1:], strict=True):
        share = below / pivot
        pivot = centre - share * above
        known = given - share * known
        pivots.append(pivot)
        knowns.append(known)
    found = known / pivot
    solved = [found]
    for pivot, known, above in zip(pivots[-2::-1], knowns[-2::-1], upper[::-1], strict=True):
        found = (known - above * found) / pivot
        solved.append(found)
    solved.reverse()
    return solved


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

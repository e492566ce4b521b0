"""Exponential and logarithm that come out alike on every machine, to the last digit.

A library takes other instructions on another processor, and its last digit differs; where water
boils off, that digit may decide which way a step is taken, and half a degree at the end of it.
Here is only what IEEE 754 rounds in one way everywhere: sums, products, quotients, halvings.
Both are within a few units of the fifteenth digit (tests/unit/heat/test_heat_alike.py).
"""

from __future__ import annotations

from math import factorial

import numpy as np

from advisor.heat.model.grid import Floats

LN2_HIGH = 0.693147180369123816490  # its last bits are nothing, so that its multiples are exact
LN2_LOW = 1.90821492927058770002e-10  # both: from the exponent ranges of the usual libraries
EXP_TERMS = tuple(1.0 / factorial(n) for n in range(12, -1, -1))
LOG_TERMS = tuple(2.0 / n for n in range(21, 0, -2))
HALF_ROOT = 0.7071067811865476


def exp(x: Floats) -> Floats:
    """E to the power x: 2^k times the power series of what is left of x within ln 2 / 2."""
    k = np.rint(x * (1.0 / (LN2_HIGH + LN2_LOW)))
    left = (x - k * LN2_HIGH) - k * LN2_LOW
    found = np.full_like(left, EXP_TERMS[0])
    for term in EXP_TERMS[1:]:
        found *= left
        found += term
    return np.asarray(np.ldexp(found, k.astype(np.int64)), dtype=np.float64)


def log(x: Floats) -> Floats:
    """The natural logarithm of x above 0: of its power of two, and 2 artanh of what is left."""
    part, power = np.frexp(x)
    small = part < HALF_ROOT
    part, power = np.where(small, part * 2.0, part), power - small
    s = (part - 1.0) / (part + 1.0)
    squared = s * s
    found = np.full_like(s, LOG_TERMS[0])
    for term in LOG_TERMS[1:]:
        found *= squared
        found += term
    found *= s
    return np.asarray(power * LN2_HIGH + (power * LN2_LOW + found), dtype=np.float64)

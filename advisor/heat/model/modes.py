"""The dry solver: exact in time, by the natural modes of the stack of cells.

C dT/dt = -K T + s, with C the cells' heat capacities, K the tridiagonal matrix of conductances,
s what the sole and the room drive in.  With A = C^-1/2 K C^-1/2 = V diag(w) V' (symmetric):

    T(t) = T0 + C^-1/2 V diag((1 - exp(-w t)) / w) V' C^-1/2 (s - K T0)

which holds for w = 0 too (the factor becomes t), so nothing needs a steady state.  Only where
nothing evaporates and nothing changes in time; source: derived (carslaw-jaeger treats the
continuous case).
"""

from __future__ import annotations

import numpy as np

from advisor.heat.model.grid import Floats, Grid


def conductances(grid: Grid) -> tuple[Floats, Floats]:
    """The diagonal (B, N) of K, and the driving term s (B, N) in W/m2."""
    diagonal = grid.back.copy()
    diagonal[:, :-1] += grid.between
    diagonal[:, 1:] += grid.between
    diagonal[:, 0] += grid.top
    drive = grid.back * grid.room[:, None]
    drive[:, 0] += grid.top * grid.sole + grid.flux
    return diagonal, drive


def inflow(between: Floats, temperature: Floats, diagonal: Floats, drive: Floats) -> Floats:
    """Net heat flow s - K T into each cell, W/m2, for temperatures (B, N)."""
    net = drive - diagonal * temperature
    net[:, :-1] += between * temperature[:, 1:]
    net[:, 1:] += between * temperature[:, :-1]
    return net


def by_modes(grid: Grid, times: Floats) -> Floats:
    """Cell temperatures (B, K, N) at ``times`` (K,) seconds after the iron came down."""
    diagonal, drive = conductances(grid)
    root = 1.0 / np.sqrt(grid.dry)
    size = grid.dry.shape[1]
    matrix = np.zeros((grid.dry.shape[0], size, size))
    here = np.arange(size)
    matrix[:, here, here] = diagonal * root**2
    matrix[:, here[1:], here[:-1]] = -grid.between * root[:, 1:] * root[:, :-1]
    rates, shapes = np.linalg.eigh(matrix)  # reads the lower triangle only
    first = inflow(grid.between, grid.start, diagonal, drive) * root
    strength = np.einsum("bnm,bn->bm", shapes, first)
    rates = np.maximum(rates, 0.0)[:, None, :]
    span = times[None, :, None]
    tiny = rates * span < 1e-9
    grown = np.where(tiny, span, -np.expm1(-rates * span) / np.where(tiny, 1.0, rates))
    rise = np.matmul(grown * strength[:, None, :], shapes.transpose(0, 2, 1))
    temperatures: Floats = grid.start[:, None, :] + rise * root[:, None, :]
    return temperatures

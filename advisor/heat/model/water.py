"""Water in the layers: where the moist solver stands, what boils off and what condenses.

By enthalpy:

* liquid water adds w c_w to a cell's capacity, c_w = 4180 J/(kg K) (instrument-maker-k-table);
* a cell with water cannot pass 100 degrees: all further heat boils off q dt / L, L = 2257 kJ/kg
  at 100 degrees (memory: physics handbook value); when dry, it climbs again;
* of the vapour the share ``down`` goes to the layers below and condenses in each that is under
  100 degrees, at most C (100 - T) / L; the rest leaves through the face, and is lost;
* steam from the iron condenses likewise from the top down, at the start.

Left out, and said so: drying below 100 degrees, the pressure of trapped steam (it would hold
slightly above 100), wicking, vapour barriers.
"""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from advisor.heat.model.grid import Floats, Grid
from advisor.heat.model.materials import WATER_SPECIFIC_HEAT

LATENT = 2.257e6  # J/kg at 100 degrees, memory (physics handbook value)
BOILING = 100.0


@dataclass(slots=True)
class State:
    """Where B cases stand, and how they came there.

    Temperature (B, N), water kg/m2 (B, N), heat let in and carried off so far (B,) J/m2;
    ``heat`` (B, N) and ``last_in`` (B,) what the last step, of ``last_dt`` seconds, brought to
    the cells and through the ends, J/m2; ``stirred`` (B,) whether that step was rough, so that
    the next had better forget it.
    """

    temperature: Floats
    water: Floats
    taken_in: Floats
    carried_off: Floats
    heat: Floats
    last_in: Floats
    stirred: NDArray[np.bool_]
    last_dt: float = 1.0


def begin(grid: Grid) -> State:
    """The state at the moment the iron comes down, its steam already condensed."""
    cases = grid.dry.shape[0]
    state = State(
        grid.start.copy(),
        grid.water.copy(),
        np.zeros(cases),
        np.zeros(cases),
        np.zeros_like(grid.start),
        np.zeros(cases),
        np.ones(cases, dtype=np.bool_),
    )
    if grid.steam.any():
        state.taken_in += grid.steam * (LATENT + BOILING * WATER_SPECIFIC_HEAT)
        condense(grid, state, grid.steam, None)
    return state


def boil(grid: Grid, state: State, capacity: Floats) -> None:
    """Turn heat above boiling point into vapour where there is water, and pass vapour down."""
    excess = np.where(state.water > 0.0, capacity * (state.temperature - BOILING), 0.0)
    if not (excess > 0.0).any():
        return
    gone = np.minimum(np.maximum(excess / LATENT, 0.0), state.water)
    boiling = gone > 0.0
    state.water = state.water - gone
    left = grid.dry + state.water * WATER_SPECIFIC_HEAT
    settled = BOILING + (excess - gone * LATENT) / left
    state.temperature = np.where(boiling, settled, state.temperature)
    down = gone * grid.down[:, None]
    each = LATENT + BOILING * WATER_SPECIFIC_HEAT
    state.carried_off += (gone - down).sum(axis=1) * each
    if down.any():
        state.stirred |= down.any(axis=1)
        condense(grid, state, np.zeros(gone.shape[0]), down)


def condense(grid: Grid, state: State, vapour: Floats, joining: Floats | None) -> None:
    """Let vapour (B,) sink and condense where it is cooler; more (B, N) joins it in each cell."""
    each = LATENT + BOILING * WATER_SPECIFIC_HEAT
    capacity = grid.dry + state.water * WATER_SPECIFIC_HEAT
    room = np.maximum(capacity * (BOILING - state.temperature), 0.0) / LATENT
    room[:, 1:][grid.between <= 0.0] = 0.0
    coming, lost = _sinking(vapour, joining, room)
    fallen = np.minimum(coming, room)
    state.carried_off += lost * each
    warm = capacity * state.temperature + fallen * each
    full = (fallen > 0.0) & (fallen >= room)
    state.water = state.water + fallen
    mixed = warm / (capacity + fallen * WATER_SPECIFIC_HEAT)
    state.temperature = np.where(full, BOILING, np.where(fallen > 0.0, mixed, state.temperature))


def _sinking(vapour: Floats, joining: Floats | None, room: Floats) -> tuple[Floats, Floats]:
    """The vapour that comes to each cell (B, N), and what leaves the last (B,).

    Each cell keeps what it has room for: what leaves is max(0, what came - room), which summed
    from the top is the sum so far less its own lowest value, where that is below nothing.
    """
    arriving = np.zeros_like(room)
    arriving[:, 0] = vapour
    if joining is not None:
        arriving[:, 1:] = joining[:, :-1]
    balance = np.cumsum(arriving - room, axis=1)
    leaving = balance - np.minimum(np.minimum.accumulate(balance, axis=1), 0.0)
    coming = arriving
    coming[:, 1:] += leaving[:, :-1]
    lost: Floats = leaving[:, -1] if joining is None else leaving[:, -1] + joining[:, -1]
    return coming, lost

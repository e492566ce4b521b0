"""Water in the layers: where the moist solver stands, what boils off and what condenses.

By enthalpy:

* liquid water adds w c_w to a cell's capacity, c_w = 4180 J/(kg K) (instrument-maker-k-table);
* a cell with free water cannot pass 100 degrees: all further heat boils off q dt / L, L = 2257
  kJ/kg at 100 degrees (memory: physics handbook value); when that is gone, it climbs again;
* water bound by the fibre leaves over a range of temperature: in its own steam, at the pressure
  of the room, a cell at T still holds BOUND exp(-EASE sqrt(T - 100)) times what its fibre holds at
  65 % rh.  The shape fits the absorption of cotton (rh 90, 65, 40, 20 and 10 %: 1.85, 1, 0.67,
  0.42 and 0.25 of it, memory) at the temperatures where steam of 101.3 kPa has that rh (103, 112,
  128, 152 and 180 degrees, steam tables, memory), within a fifth: cotton at 110 degrees holds 8 %
  (memory; that warmth takes little from cotton between 60 and 110 degrees where it is as moist as
  that: urquhart-williams-1924, abstract).  Other fibres are taken to follow the same shape;
* of the vapour the share ``down`` goes to the layers below and condenses in each that is under
  100 degrees, at most C (100 - T) / L; the rest leaves through the face, and is lost;
* steam from the iron condenses likewise from the top down, at the start.

Left out, and said so: drying below 100 degrees, the heat by which fibre holds its water (up to a
fifth of L more), steam taken up above 100 degrees, the pressure of trapped steam (it would hold
slightly above 100), wicking, vapour barriers.
"""

from __future__ import annotations

import numpy as np
from msgspec import Struct
from numpy.typing import NDArray

from advisor.heat.model.alike import exp, log
from advisor.heat.model.grid import NOTHING_KG, Floats, Grid
from advisor.heat.model.materials import WATER_SPECIFIC_HEAT

LATENT = 2.257e6  # J/kg at 100 degrees, memory (physics handbook value)
BOILING = 100.0
VAPOUR = LATENT + BOILING * WATER_SPECIFIC_HEAT  # J/kg that a kilogram of vapour carries
BOUND, EASE = 2.35, 0.25  # see above
NEWTON_STEPS = 40  # at most; three or four will do, halving alone would take all
SETTLED_K = 1e-3  # the last step of Newton is no longer than this: its end is far closer


class StackState(Struct):
    """Where B cases stand, and how they came there.

    Temperature (B, N), free ``water`` and ``bound`` kg/m2 (B, N), the last step's ``rise`` of
    temperature (B, N) and of it the ``jump`` by what condensed, heat let in and carried off so far
    (B,) J/m2;
    ``heat`` (B, N) and ``last_in`` (B,) what the last step, of ``last_dt`` seconds, brought to
    the cells and through the ends, J/m2; ``stirred`` (B,) whether that step was rough, so that
    the next had better forget it.
    """

    temperature: Floats
    water: Floats
    bound: Floats
    rise: Floats
    jump: Floats
    fallen: Floats
    taken_in: Floats
    carried_off: Floats
    heat: Floats
    last_in: Floats
    stirred: NDArray[np.bool_]
    last_dt: float = 1.0

    def capacity(self, grid: Grid) -> Floats:
        """Heat capacity (B, N) with all water in it, J/(m2 K)."""
        held: Floats = grid.dry + (self.water + self.bound) * WATER_SPECIFIC_HEAT
        return held


def begin(grid: Grid) -> StackState:
    """The state at the moment the iron comes down, its steam already condensed."""
    cases = grid.dry.shape[0]
    bound = np.minimum(grid.water, BOUND * grid.binds)
    bound = np.where(bound > NOTHING_KG, bound, 0.0)
    state = StackState(
        grid.start.copy(),
        grid.water - bound,
        bound,
        np.zeros_like(grid.start),
        np.zeros_like(grid.start),
        np.zeros_like(grid.start),
        np.zeros(cases),
        np.zeros(cases),
        np.zeros_like(grid.start),
        np.zeros(cases),
        np.ones(cases, dtype=np.bool_),
    )
    if grid.steam.any():
        state.taken_in += grid.steam * VAPOUR
        condense(grid, state, grid.steam, None)
        state.fallen = np.zeros_like(grid.start)
    return state


def boil(grid: Grid, state: StackState) -> None:
    """Turn heat that water cannot bear into vapour, first of free water, and pass vapour down."""
    capacity = state.capacity(grid)
    excess = np.where(state.water > 0.0, capacity * (state.temperature - BOILING), 0.0)
    gone = np.minimum(np.maximum(excess / LATENT, 0.0), state.water)
    boiling = gone > 0.0
    state.water = state.water - gone
    settled = BOILING + (excess - gone * LATENT) / state.capacity(grid)
    state.temperature = np.where(boiling, settled, state.temperature)
    gone += _let_go(grid, state)
    if not gone.any():
        return
    down = gone * grid.down[:, None]
    state.carried_off += (gone - down).sum(axis=1) * VAPOUR
    if down.any():
        state.stirred |= down.any(axis=1)
        condense(grid, state, np.zeros(gone.shape[0]), down)


def heat_taken(dry: Floats, bound: Floats, binds: Floats, warm: Floats) -> tuple[Floats, Floats]:
    """Heat of cells without free water, with that of the bound water that left, and what is left.

    J/m2 counted from 0 degrees, and kg/m2, at temperatures ``warm``, for cells that held ``bound``.
    """
    over = np.sqrt(np.maximum(warm - BOILING, 0.0))
    left = np.minimum(bound, BOUND * binds * exp(-EASE * over))
    return (dry + left * WATER_SPECIFIC_HEAT) * warm + (bound - left) * VAPOUR, left


def settled_at(dry: Floats, bound: Floats, binds: Floats, heat: Floats, near: Floats) -> Floats:
    """The temperature at which such cells, with ``bound`` above 0, hold so much heat (J/m2).

    Newton's steps in the root of what is above boiling point, kept between two bounds, beginning
    at the temperature ``near`` by.  Each cell goes on until its own steps are over, so that its
    company changes nothing.
    """
    found = heat / (dry + bound * WATER_SPECIFIC_HEAT)  # where no water leaves
    some = np.maximum(bound, np.finfo(float).tiny)  # so little that no number divides by it
    low = log(np.maximum(BOUND * binds / some, 1.0)) / EASE  # where it begins to
    high = np.sqrt(np.maximum(found - BOILING, 0.0))
    at = np.flatnonzero(high > low)
    low, high, dry, binds = low[at], high[at], dry[at], binds[at]
    root = np.clip(np.sqrt(np.maximum(near[at] - BOILING, 0.0)), low, high)
    rest = heat[at] - bound[at] * VAPOUR
    for _ in range(NEWTON_STEPS):
        if not at.size:
            break
        warm = BOILING + root * root
        left = BOUND * binds * exp(-EASE * root)
        carries = left * WATER_SPECIFIC_HEAT
        over = (dry + carries) * warm - left * VAPOUR - rest
        slope = 2.0 * root * (dry + carries) + EASE * (left * VAPOUR - carries * warm)
        low, high = np.where(over > 0.0, low, root), np.where(over > 0.0, root, high)
        tried = root - over / slope
        tried = np.where((tried >= low) & (tried <= high), tried, (low + high) / 2.0)
        found[at] = BOILING + tried * tried
        far = np.abs(found[at] - warm) > SETTLED_K
        at, root, rest, dry, binds = at[far], tried[far], rest[far], dry[far], binds[far]
        low, high = low[far], high[far]
    return found


def _let_go(grid: Grid, state: StackState) -> Floats:
    """Bound water (B, N) that leaves cells now too warm for it; they cool by its heat."""
    gone = np.zeros_like(state.bound)
    at = np.nonzero((state.temperature > BOILING) & (state.bound > 0.0) & (state.water <= 0.0))
    if at[0].size:
        dry, bound, binds = grid.dry[at], state.bound[at], grid.binds[at]
        warm = state.temperature[at]
        heat = (dry + bound * WATER_SPECIFIC_HEAT) * warm
        left = heat_taken(dry, bound, binds, settled_at(dry, bound, binds, heat, warm))[1]
        gone[at], state.bound[at] = bound - left, left
        # What the last step leaves over stays in the cell, so that no heat is lost.
        rest = heat - (bound - left) * VAPOUR
        state.temperature[at] = rest / (dry + left * WATER_SPECIFIC_HEAT)
    return gone


def condense(grid: Grid, state: StackState, vapour: Floats, joining: Floats | None) -> None:
    """Let vapour (B,) sink and condense where it is cooler; more (B, N) joins it in each cell.

    The fibre takes of it first, up to what it can bind.
    """
    capacity = state.capacity(grid)
    room = np.maximum(capacity * (BOILING - state.temperature), 0.0) / LATENT
    room[:, 1:][grid.between <= 0.0] = 0.0
    coming, lost = _sinking(vapour, joining, room)
    state.fallen = fallen = np.minimum(coming, room)
    state.carried_off += lost * VAPOUR
    warm = capacity * state.temperature + fallen * VAPOUR
    full = (fallen > 0.0) & (fallen >= room)
    taken = np.minimum(fallen, np.maximum(BOUND * grid.binds - state.bound, 0.0))
    state.bound = state.bound + taken
    state.water = state.water + (fallen - taken)
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

"""The moist solver: step by step in time, with water that boils off and steam that condenses.

Each step is the two-step backward formula for unequal steps, in the heat E that each cell
takes up (BDF2, a standard stiff method; r the ratio of this step to the last):

    E_now = r^2 / (1 + 2r) E_last + (1 + r) / (1 + 2r) dt (s - K T_now)

a tridiagonal system for the change of temperature; one-step (backward Euler) at first and after
a step in which a cell began to boil, fell dry or took up steam.  Steps grow with time to about
6 % of it.  Water by its enthalpy:

* liquid water adds w c_w to a cell's capacity, c_w = 4180 J/(kg K) (instrument-maker-k-table);
* a cell with water cannot pass 100 degrees: it is held there, and all heat that flows in boils
  off q dt / L, L = 2257 kJ/kg at 100 degrees (memory: physics handbook value); when dry, it
  climbs again;
* of the vapour the share ``down`` goes to the layers below and condenses in each that is under
  100 degrees, at most C (100 - T) / L; the rest leaves through the face, and is lost;
* steam from the iron condenses likewise from the top down, at the start.

Left out, and said so: drying below 100 degrees, the pressure of trapped steam (it would hold
slightly above 100), wicking, vapour barriers.  Time steps grow with time.
"""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from advisor.craft.heat.grid import Floats, Grid
from advisor.craft.heat.materials import WATER_SPECIFIC_HEAT
from advisor.craft.heat.modes import conductances, inflow

LATENT = 2.257e6  # J/kg at 100 degrees, memory (physics handbook value)
BOILING = 100.0
GENTLE_STEPS = 6
SWEEP_FROM = 150  # cases from which sweeping through the cells beats a full solve

Face = Callable[[Grid, Floats], Grid]  # what acts on the top, given cell temperatures


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
        _condense(grid, state, grid.steam.copy(), None)
    return state


def march(
    grid: Grid, state: State, times: Floats, *, split: int = 1, face: Face | None = None
) -> tuple[Floats, State]:
    """Cell temperatures (B, K, N) at ``times`` (K,) rising seconds, and the state at the end.

    ``split`` cuts each interval into so many steps; ``face`` changes what acts on the top.
    """
    found = np.empty((grid.dry.shape[0], len(times), grid.dry.shape[1]))
    now, taken = 0.0, 0
    matrix = conductances(grid)
    for k, until in enumerate(times):
        parts = split * (GENTLE_STEPS if taken == 0 else 1)
        for _ in range(parts):
            acting = grid
            if face is not None:
                acting = face(grid, state.temperature)
                matrix = conductances(acting)
            dt = (float(until) - now) / parts
            if taken < GENTLE_STEPS:
                state.stirred[:] = True
            _step(acting, matrix, state, dt)
            taken += 1
        now = float(until)
        found[:, k] = state.temperature
    return found, state


def _step(grid: Grid, matrix: tuple[Floats, Floats], state: State, dt: float) -> None:
    """One step of ``dt`` seconds, changing ``state``."""
    diagonal, drive = matrix
    temperature, wet = state.temperature, state.water > 0.0
    capacity = grid.dry + state.water * WATER_SPECIFIC_HEAT
    to_boiling = BOILING - temperature
    held = wet & (to_boiling <= 1e-9)
    ratio = dt / state.last_dt
    memory = np.where(state.stirred, 0.0, ratio**2 / (1.0 + 2.0 * ratio))[:, None]
    weight = np.where(state.stirred, 1.0, (1.0 + ratio) / (1.0 + 2.0 * ratio))[:, None] * dt
    main = capacity / weight + diagonal
    net = inflow(grid, temperature, diagonal, drive) + memory / weight * state.heat
    change = np.empty_like(net)
    rows: NDArray[np.intp] = np.arange(len(net))
    loose = np.zeros_like(held)
    state.stirred = np.zeros(len(net), dtype=np.bool_)
    while rows.size:
        change[rows] = _solve_held(
            -grid.between[rows],
            main[rows],
            net[rows],
            held[rows],
            to_boiling[rows],
        )
        after = temperature + change
        heat = memory * state.heat + weight * inflow(grid, after, diagonal, drive)
        if not wet.any():
            break
        # A cell whose last water leaves within the step is let go, its latent heat a sink; so
        # is one that cools; one with water that would pass boiling is held.  Only their cases
        # are solved again.
        bears = state.water * LATENT + capacity * to_boiling
        gone = held & (heat > bears)
        slack = held & (heat < capacity * to_boiling - 1e-9)
        caught = wet & ~held & ~loose & (change > to_boiling + 1e-9)
        net = net - np.where(gone, state.water * LATENT / weight, 0.0)
        held, loose = (held & ~gone & ~slack) | caught, loose | gone | slack
        rows = np.flatnonzero((gone | slack | caught).any(axis=1))
        state.stirred[rows] = True
    state.last_in = memory[:, 0] * state.last_in + weight[:, 0] * _through_ends(grid, after)
    state.taken_in += state.last_in
    state.heat, state.last_dt = heat, dt
    state.temperature = temperature + heat / capacity
    if wet.any():
        _boil(grid, state, capacity)


def _solve_held(
    side: Floats, main: Floats, net: Floats, held: NDArray[np.bool_], fixed: Floats
) -> Floats:
    """The change of temperature (B, N); held cells change by ``fixed`` and no more."""
    lower, upper = side, side
    if held.any():
        main, net = np.where(held, 1.0, main), np.where(held, fixed, net)
        lower, upper = np.where(held[:, 1:], 0.0, side), np.where(held[:, :-1], 0.0, side)
    return solve_tridiagonal(lower, main, upper, net)


def _boil(grid: Grid, state: State, capacity: Floats) -> None:
    """Turn heat above boiling point into vapour where there is water, and pass vapour down."""
    excess = np.where(state.water > 0.0, capacity * (state.temperature - BOILING), 0.0)
    if not (excess > 0.0).any():
        return
    gone = np.clip(excess / LATENT, 0.0, state.water)
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
        _condense(grid, state, np.zeros(gone.shape[0]), down)


def _condense(grid: Grid, state: State, vapour: Floats, joining: Floats | None) -> None:
    """Let vapour (B,), used up here, sink and condense where it is cooler; more joins it."""
    each = LATENT + BOILING * WATER_SPECIFIC_HEAT
    capacity = grid.dry + state.water * WATER_SPECIFIC_HEAT
    room = np.maximum(capacity * (BOILING - state.temperature), 0.0) / LATENT
    room[:, 1:][grid.between <= 0.0] = 0.0
    fallen = np.zeros_like(room)
    last = int(np.flatnonzero(room.any(axis=0)).max(initial=-1)) + 1  # nothing condenses below
    for cell in range(last):
        fallen[:, cell] = np.minimum(vapour, room[:, cell])
        vapour -= fallen[:, cell]
        if joining is not None:
            vapour += joining[:, cell]
    if joining is not None:
        vapour += joining[:, last:].sum(axis=1)
    state.carried_off += vapour * each
    warm = capacity * state.temperature + fallen * each
    full = (fallen > 0.0) & (fallen >= room)
    state.water = state.water + fallen
    mixed = warm / (capacity + fallen * WATER_SPECIFIC_HEAT)
    state.temperature = np.where(full, BOILING, np.where(fallen > 0.0, mixed, state.temperature))


def _through_ends(grid: Grid, temperature: Floats) -> Floats:
    """Heat flow into the stack from both ends, W/m2 (B,)."""
    top = grid.top * (grid.sole - temperature[:, 0]) + grid.flux
    flow: Floats = top + (grid.back * (grid.room[:, None] - temperature)).sum(axis=1)
    return flow


def energy(grid: Grid, state: State) -> Floats:
    """Heat held in the cells, counted from liquid water and dry stuff at 0 degrees, J/m2 (B,)."""
    capacity = grid.dry + state.water * WATER_SPECIFIC_HEAT
    held: Floats = (capacity * state.temperature).sum(axis=1)
    return held


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

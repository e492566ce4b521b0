"""The moist solver: step by step in time, over water that boils and steam that condenses.

Each step is the two-step backward formula for unequal steps, in the heat E that each cell
takes up (BDF2, a standard stiff method; r the ratio of this step to the last):

    E_now = r^2 / (1 + 2r) E_last + (1 + r) / (1 + 2r) dt (s - K T_now)

a tridiagonal system for the change of temperature; one-step (backward Euler) at first, after a
step in which a cell began to boil, fell dry or took up steam, and where two steps would
overshoot.  A cell with water is held at 100 degrees while heat flows in (see :mod:`water`).
Vapour falls once a step; what condensed in the last step is expected to go on in this one, so
that it is conducted away while it comes, and only the difference is put right at the step's end
(half of which is told).  Steps are 8 % of the time gone by, 20 % in the first second.
Measured against another solver of 24 even cells in a layer and tiny explicit steps
(tests/published/test_heat_oracles.py), where vapour goes down: below thick moist cloth 60, 80 and
90 degrees are reached within 8 % of their time.  Against steps twelve times finer times past
boiling are within 5 % (tests/laws/test_heat_laws.py).
"""

from __future__ import annotations

from collections.abc import Callable

import numpy as np
from msgspec import Struct
from numpy.typing import NDArray

from advisor.heat.model.grid import Floats, Grid
from advisor.heat.model.materials import WATER_SPECIFIC_HEAT
from advisor.heat.model.modes import conductances, inflow
from advisor.heat.model.tridiagonal import solve_tridiagonal
from advisor.heat.model.water import BOILING, LATENT, StackState, boil, heat_taken, settled_at

GENTLE_STEPS = 6
BEYOND_K = 5.0  # a rise beyond boiling over which bound water is expected to leave, design-choice
BENT_K = 0.5  # how far a rise may come out unlike the expected one, design-choice
BENDING = 6  # how often it is put right in one step

Cells = tuple[NDArray[np.signedinteger], ...]  # cases, and cells of them
Face = Callable[[Grid, Floats], Grid]  # what acts on the top, given cell temperatures


class _Advance(Struct, frozen=True):
    """A step tried: temperatures and heat (B, N), the two weights and what was rough (B,)."""

    after: Floats
    heat: Floats
    memory: Floats
    weight: Floats
    rough: NDArray[np.bool_]


def march(
    grid: Grid, state: StackState, times: Floats, *, split: int = 1, face: Face | None = None
) -> tuple[Floats, StackState]:
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
        found[:, k] = state.temperature - state.jump / 2.0
    return found, state


def _step(grid: Grid, matrix: tuple[Floats, Floats], state: StackState, dt: float) -> None:
    """One step of ``dt`` seconds, changing ``state``."""
    # What condensed in the last step is expected to go on, and conducted away while it does.
    source = state.fallen * (LATENT / state.last_dt)
    made = _advance(grid, matrix, source, state, dt)
    if not state.stirred.all():
        # Two-step formulas may overshoot after a jolt; one step alone never does.
        wild = _overshoot(grid, state, made.after) & ~state.stirred
        if wild.any():
            state.stirred = state.stirred | wild
            made = _advance(grid, matrix, source, state, dt)
    state.last_in = made.memory * state.last_in + made.weight * _through_ends(grid, made.after)
    state.taken_in += state.last_in
    heat = made.heat - source * dt
    state.heat, state.last_dt = heat, dt
    state.stirred = made.rough | (source > 0.0).any(axis=1)
    before = state.temperature
    state.jump, state.fallen = np.zeros_like(before), np.zeros_like(before)
    expected = before + made.heat / state.capacity(grid)
    state.temperature = before + heat / state.capacity(grid)
    if state.water.any() or state.bound.any():
        boil(grid, state)
    fed = ((source > 0.0) | (state.fallen > 0.0)) & (expected <= BOILING)
    state.jump = np.where(fed, state.temperature - expected, 0.0)
    state.rise = state.temperature - before


def _advance(
    grid: Grid, matrix: tuple[Floats, Floats], source: Floats, state: StackState, dt: float
) -> _Advance:
    """What a step would bring, cells at boiling point held there while their water lasts.

    ``source`` (B, N) W/m2 is the heat of vapour that is expected to condense; at boiling point it
    goes on as vapour instead.
    """
    diagonal, drive = matrix[0], matrix[1] + source
    wet = (state.water > 0.0) | (source > 0.0)
    capacity = state.capacity(grid)
    memory, weight = _weights(state, dt)
    bends = _Bends(grid, state, weight, diagonal, ~wet & (state.bound > 0.0))
    main = bends.expected(dt) / weight + diagonal
    kept = memory * state.heat
    net = inflow(grid.between, state.temperature, diagonal, drive) + kept / weight
    goal, latent = BOILING - state.temperature, state.water * LATENT + source * dt
    held, loose = wet & (goal <= 1e-9), np.zeros_like(wet)
    change = _solve_held(grid.between, main, net, held, goal)
    heat = kept + weight * inflow(grid.between, state.temperature + change, diagonal, drive)
    rough = np.zeros(len(net), dtype=np.bool_)
    rows = np.flatnonzero((wet | bends.where).any(axis=1))
    while rows.size:
        # A cell whose last water leaves within the step is let go as dry, its water a sink; so
        # is one that cools; one with water that would pass boiling is held.  Only their cases
        # are solved again.
        fast, rise, took = held[rows], goal[rows], heat[rows]
        gone = fast & (took > latent[rows] + capacity[rows] * rise)
        slack = fast & (took < capacity[rows] * rise - 1e-9)
        caught = wet[rows] & ~fast & ~loose[rows] & (change[rows] > rise + 1e-9)
        freed = gone | slack
        again = (freed | caught).any(axis=1)
        held[rows], loose[rows] = (fast & ~freed) | caught, loose[rows] | freed
        rough[rows] |= again
        if gone.any():
            at = (rows[np.nonzero(gone)[0]], np.nonzero(gone)[1])
            net[at] -= source[at]
            bends.let_go(at, net, main)
        again |= bends.put_right(rows, change, heat, main)
        rows = rows[again]
        if rows.size:
            side, start = grid.between[rows], state.temperature[rows]
            change[rows] = _solve_held(side, main[rows], net[rows], held[rows], goal[rows])
            flow = inflow(side, start + change[rows], diagonal[rows], drive[rows])
            heat[rows] = kept[rows] + weight[rows] * flow
    return _Advance(state.temperature + change, heat, memory[:, 0], weight[:, 0], rough)


class _Bends:
    """Cells whose bound water may leave within a step: heat for a kelvin bends with temperature.

    ``where`` (B, N) they are; ``takes`` (B, N) the heat taken up for a kelvin over the whole rise
    that is expected; ``sunk`` (B, N) what free water took with it in this step, J/m2.
    """

    def __init__(
        self,
        grid: Grid,
        state: StackState,
        weight: Floats,
        diagonal: Floats,
        where: NDArray[np.bool_],
    ) -> None:
        self.grid, self.state, self.weight, self.diagonal = grid, state, weight, diagonal
        self.where, self.takes = where, state.capacity(grid)
        self.sunk = np.zeros_like(self.takes)
        self.tries = BENDING

    def expected(self, dt: float) -> Floats:
        """``takes`` over the rise that the last step leads one to expect."""
        rise = np.maximum(self.state.rise * (dt / self.state.last_dt), 0.5)
        at = np.nonzero(self.where & (self.state.temperature + rise > BOILING))
        if at[0].size:
            self._over(at, self.state.temperature[at] + rise[at])
        return self.takes

    def let_go(self, at: Cells, net: Floats, main: Floats) -> None:
        """Take the last free water of cells as a sink; they are bound-only from now."""
        water, span = self.state.water[at], self.weight[at[0], 0]
        rise = BOILING - self.state.temperature[at]
        self.sunk[at] = water * (LATENT + WATER_SPECIFIC_HEAT * rise)
        self.where[at] = self.state.bound[at] > 0.0
        self._over(at, np.full(water.shape, BOILING + BEYOND_K))
        net[at] -= self.sunk[at] / span
        main[at] = self.takes[at] / span + self.diagonal[at]

    def _over(self, at: Cells, warm: Floats) -> None:
        """Reckon ``takes`` of some cells between where they are and ``warm``."""
        dry, bound, binds = self.grid.dry[at], self.state.bound[at], self.grid.binds[at]
        start = self.state.temperature[at]
        alone = dry + bound * WATER_SPECIFIC_HEAT
        gain = heat_taken(dry, bound, binds, warm)[0] - alone * start
        rise = warm - start
        far = np.abs(rise) > 1e-3
        self.takes[at] = np.where(far, gain / np.where(far, rise, 1.0), alone)

    def put_right(
        self, rows: NDArray[np.int64], change: Floats, heat: Floats, main: Floats
    ) -> NDArray[np.bool_]:
        """Where a rise came out unlike the expected one, set ``main`` anew; which rows (r,).

        Each cell by itself, its neighbours taken as they came out.
        """
        again = np.zeros(rows.size, dtype=np.bool_)
        found = self.state.temperature[rows] + change[rows]
        inside = np.nonzero(self.where[rows] & (found > BOILING - 5.0))
        self.tries -= 1
        if not inside[0].size or self.tries < 0:
            return again
        at = (rows[inside[0]], inside[1])
        cell = self.grid.dry[at], self.state.bound[at], self.grid.binds[at]
        held = (cell[0] + cell[1] * WATER_SPECIFIC_HEAT) * self.state.temperature[at]
        whole = held + heat[at] - self.sunk[at]
        warm = found[inside]
        cold = heat_taken(*cell, warm - BENT_K)[0] > whole
        off = cold | (heat_taken(*cell, warm + BENT_K)[0] < whole)
        if off.any():
            some = (at[0][off], at[1][off])
            pull = self.weight[some[0], 0] * self.diagonal[some]
            dry, bound, binds = (x[off] for x in cell)
            goal, near = whole[off] + pull * warm[off], warm[off]
            self._over(some, settled_at(dry + pull, bound, binds, goal, near))
            main[some] = self.takes[some] / self.weight[some[0], 0] + self.diagonal[some]
            again[inside[0][off]] = True
        return again


def _weights(state: StackState, dt: float) -> tuple[Floats, Floats]:
    """What the last step counts for, and the seconds that this one counts for, both (B, 1)."""
    ratio = dt / state.last_dt
    memory = np.where(state.stirred, 0.0, ratio**2 / (1.0 + 2.0 * ratio))
    weight = np.where(state.stirred, 1.0, (1.0 + ratio) / (1.0 + 2.0 * ratio)) * dt
    return memory[:, None], weight[:, None]


def _overshoot(grid: Grid, state: StackState, after: Floats) -> NDArray[np.bool_]:
    """Which cases (B,) would leave the span of their own temperatures, the sole's and room's."""
    low, high = np.minimum(grid.sole, grid.room), np.maximum(grid.sole, grid.room)
    low = np.minimum(low, state.temperature.min(axis=1)) - 1e-6
    high = np.maximum(high, state.temperature.max(axis=1)) + 1e-6
    outside = (after.min(axis=1) < low) | (after.max(axis=1) > high)
    wild: NDArray[np.bool_] = outside & (grid.flux == 0.0)
    return wild


def _solve_held(
    between: Floats, main: Floats, net: Floats, held: NDArray[np.bool_], fixed: Floats
) -> Floats:
    """The change of temperature (B, N); held cells change by ``fixed`` and no more."""
    side = -between
    lower, upper = side, side
    if held.any():
        main, net = np.where(held, 1.0, main), np.where(held, fixed, net)
        lower, upper = np.where(held[:, 1:], 0.0, side), np.where(held[:, :-1], 0.0, side)
    return solve_tridiagonal(lower, main, upper, net)


def _through_ends(grid: Grid, temperature: Floats) -> Floats:
    """Heat flow into the stack from both ends, W/m2 (B,)."""
    top = grid.top * (grid.sole - temperature[:, 0]) + grid.flux
    flow: Floats = top + (grid.back * (grid.room[:, None] - temperature)).sum(axis=1)
    return flow

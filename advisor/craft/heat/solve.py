"""From stacks to the temperatures of their layers in time; picks the solver.

Boundary conditions: the sole's temperature, constant, through the contact resistance above (a
real sole sags under load, so this is the cautious choice); insulated or convective below; all
layers at the room's temperature at first, or each at its own.  Where nothing holds water the
exact modes answer, else the march.  A layer's temperature is its HOTTEST: of its cells and its
two faces, which are rebuilt from the heat flow.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from itertools import pairwise

import numpy as np

from advisor.craft.heat.grid import Floats, Grid, build_grid
from advisor.craft.heat.march import march
from advisor.craft.heat.modes import by_modes
from advisor.craft.heat.stack import Stack
from advisor.craft.heat.water import begin

ASKED = (1.0, 2.0, 5.0, 10.0, 20.0)
HORIZON = 60.0
RATIO = 1.06  # of each kept time to the one before, after the first second
_ANCHORS = (0.02, *ASKED, HORIZON)


@dataclass(frozen=True, slots=True)
class Trace:
    """Temperatures of B cases at K times: ``cells`` (B, K, N), faces and hottest (B, K, L).

    ``times`` (K,) starts at 0; ``over`` and ``under`` are the layers' upper and lower faces.
    """

    times: Floats
    cells: Floats
    over: Floats
    under: Floats
    hottest: Floats

    def at(self, second: float) -> Floats:
        """The hottest of each layer (B, L) at a time, straight between the recorded ones."""
        return _between(self.times, self.hottest, second)

    def joint(self, place: int) -> Floats:
        """The cooler side (B, K) of the joint below layer ``place``."""
        cooler: Floats = np.minimum(self.under[:, :, place], self.over[:, :, place + 1])
        return cooler


def record_times(horizon: float = HORIZON, ratio: float = RATIO) -> Floats:
    """The seconds at which temperatures are kept: dense at first, the asked ones among them."""
    anchors = [a for a in _ANCHORS if a < horizon] + [horizon]
    parts = [np.array(anchors[:1])]
    for start, end in pairwise(anchors):
        # Nobody asks for tenths of a second; the first second may go in longer strides.
        stride = ratio**2 if end <= 1.0 else ratio
        count = max(1, int(np.ceil(np.log(end / start) / np.log(stride))))
        parts.append(np.geomspace(start, end, count + 1)[1:])
    return np.concatenate(parts)


def trace(
    stacks: Sequence[Stack],
    draws: Sequence[Floats] | None = None,
    *,
    times: Floats | None = None,
    cells: int = 6,
) -> Trace:
    """The course of the temperature in all layers of all stacks, in one vectorised call."""
    grid = build_grid(stacks, draws, cells=cells)
    return trace_grid(grid, record_times() if times is None else times)


def trace_grid(grid: Grid, times: Floats, *, split: int = 1) -> Trace:
    """The same from a grid; ``split`` makes the moist solver's steps finer."""
    # Case by case, so that a stack's answer does not hang on the company it is solved in.
    wet = grid.moist
    found = np.empty((len(wet), len(times) + 1, grid.dry.shape[1]))
    found[:, 0] = grid.start
    found[:, 1:] = grid.start[:, None]
    deep = grid.depth
    for layers in np.unique(deep[~wet]):
        these = ~wet & (deep == layers)
        some = by_modes(grid.only(these).upper(int(layers)), times)
        found[these, 1:, : some.shape[2]] = some
    if wet.any():
        damp = grid.only(wet)
        state = begin(damp)
        found[wet, 0] = state.temperature
        found[wet, 1:], _ = march(damp, state, times, split=split)
    return as_trace(grid, np.concatenate([[0.0], times]), found)


def as_trace(grid: Grid, times: Floats, cells: Floats) -> Trace:
    """Cell temperatures (B, K, N) gathered into the layers' faces and hottest places."""
    cases, kept, _ = cells.shape
    step = grid.cells
    warm = cells.reshape(cases, kept, grid.layers, step)
    half = grid.half[:, None, :]
    first, last = slice(0, None, step), slice(step - 1, None, step)
    into = grid.top[:, None] * (grid.sole[:, None] - cells[:, :, 0]) + grid.flux[:, None]
    # Heat crosses from layer to layer between the last cell of one and the first of the next.
    cross = grid.between[:, None, step - 1 :: step]
    flow = cross * (cells[:, :, last][:, :, :-1] - cells[:, :, first][:, :, 1:])
    over, under = warm[:, :, :, 0].copy(), warm[:, :, :, -1].copy()
    over[:, :, 0] += into * half[:, :, 0]
    over[:, :, 1:] += flow * half[:, :, first][:, :, 1:]
    under[:, :, :-1] -= flow * half[:, :, last][:, :, :-1]
    if grid.back.any():
        lost = grid.back[:, None, last] * (warm[:, :, :, -1] - grid.room[:, None, None])
        under -= lost * half[:, :, last]
    inside = warm[:, :, :, 0].copy()
    for cell in range(1, step):
        np.maximum(inside, warm[:, :, :, cell], out=inside)
    # At the very first moment no heat has flowed; the faces are as warm as their cells.
    if times[0] == 0.0:
        over[:, 0], under[:, 0] = inside[:, 0], inside[:, 0]
    hottest = np.maximum(np.maximum(over, under), inside)
    return Trace(times, cells, over, under, hottest)


def seconds_until(times: Floats, course: Floats, goal: float) -> Floats:
    """When each course (B, K) first reaches the goal: seconds (B,), inf where it never does."""
    there = course >= goal
    first = np.argmax(there, axis=1)
    rows = np.arange(course.shape[0])
    before = np.maximum(first - 1, 0)
    low, high = course[rows, before], course[rows, first]
    part = np.where(high > low, (goal - low) / np.where(high > low, high - low, 1.0), 0.0)
    when = times[before] + np.clip(part, 0.0, 1.0) * (times[first] - times[before])
    seconds: Floats = np.where(first == 0, 0.0, when)
    return np.where(there.any(axis=1), seconds, np.inf)


def _between(times: Floats, course: Floats, second: float) -> Floats:
    """A course (B, K, L) read at one time."""
    after = int(np.clip(np.searchsorted(times, second), 1, len(times) - 1))
    span = times[after] - times[after - 1]
    part = float(np.clip((second - times[after - 1]) / span, 0.0, 1.0))
    read: Floats = course[:, after - 1] + part * (course[:, after] - course[:, after - 1])
    return read

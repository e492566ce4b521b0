"""From stacks to the temperatures of their layers in time; picks the solver.

Boundary conditions: the sole's temperature, constant, through the contact resistance above (a
real sole sags under load, so this is the cautious choice); insulated or convective below; all
layers at the room's temperature at first, or each at its own.  Where nothing holds water the
exact modes answer, else the march.  A layer's temperature is its HOTTEST: of its cells and its
two faces, which are rebuilt from the heat flow.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from itertools import pairwise

import numpy as np
from msgspec import Struct
from numpy.typing import NDArray

from advisor.heat.model.alike import exp, log
from advisor.heat.model.grid import FINE_CELLS, Floats, Grid, build_grid, cells_for
from advisor.heat.model.march import march
from advisor.heat.model.modes import by_modes
from advisor.heat.model.stack import Stack
from advisor.heat.model.water import begin

ASKED = (1.0, 2.0, 5.0, 10.0, 20.0)
HORIZON = 60.0
RATIO = 1.08  # of each kept time to the one before, after the first second
FINE_SPLIT = 2  # thick moist layers are also stepped finer: vapour falls once a step
_AT_ONCE = 64  # dry cases solved together: more would not stay in the processor's own memory
_ANCHORS = (0.02, *ASKED, HORIZON)


class Course(Struct, frozen=True):
    """Temperatures of the layers of B cases at K times: faces and hottest (B, K, L).

    ``times`` (K,) starts at 0; ``over`` and ``under`` are the layers' upper and lower faces.
    """

    times: Floats
    over: Floats
    under: Floats
    hottest: Floats

    def at(self, second: float) -> Floats:
        """The hottest of each layer (B, L) at a time, straight between the recorded ones."""
        return between(self.times, self.hottest, second)

    def joint(self, place: int, rows: slice = slice(None)) -> Floats:
        """The cooler side (B, K) of the joint below layer ``place``."""
        above, below = self.under[rows, :, place], self.over[rows, :, place + 1]
        cooler: Floats = np.minimum(above, below)
        return cooler


class Trace(Course, frozen=True):
    """The same with the temperatures of all cells (B, K, N)."""

    cells: Floats


def record_times(horizon: float = HORIZON, ratio: float = RATIO) -> Floats:
    """The seconds at which temperatures are kept: dense at first, the asked ones among them."""
    anchors = [a for a in _ANCHORS if a < horizon] + [horizon]
    parts = [np.array(anchors[:1])]
    for start, end in pairwise(anchors):
        # Nobody asks for tenths of a second; the first second may go in longer strides.
        stride = ratio**2.4 if end <= 1.0 else ratio
        span, one = log(np.array([end / start, stride]))
        count = max(1, int(np.ceil(span / one)))
        between_them = start * exp(span / count * np.arange(1.0, count))
        parts.append(np.append(between_them, end))
    return np.concatenate(parts)


def trace(
    stacks: Sequence[Stack],
    draws: Sequence[Floats] | None = None,
    *,
    times: Floats | None = None,
    cells: int = 6,
) -> Trace:
    """The temperature in time of all cells of all stacks, in one vectorised call."""
    grid = build_grid(stacks, draws, cells=cells)
    return trace_grid(grid, record_times() if times is None else times, split=_split(grid))


def trace_grid(grid: Grid, times: Floats, *, split: int = 1) -> Trace:
    """The same from a grid; ``split`` makes the moist solver's steps finer."""
    found = np.repeat(grid.start[:, None], len(times) + 1, axis=1)
    for cases, part, some in _solved(grid, times, split):
        found[cases, :, : part.dry.shape[1]] = some
    return as_trace(grid, np.concatenate([[0.0], times]), found)


def course(stacks: Sequence[Stack], draws: Sequence[Floats], times: Floats) -> Course:
    """The temperature in time of all layers of all stacks, each as often as it has draws.

    One vectorised call that never holds the cells of more than a few cases.
    """
    kept = np.concatenate([[0.0], times])
    sizes = [len(draw) for draw in draws]
    cuts = np.array([cells_for(stack) for stack in stacks])
    shape = (sum(sizes), len(kept), max(len(stack.layers) for stack in stacks))
    found = Course(kept, np.zeros(shape), np.zeros(shape), np.zeros(shape))
    for cells in np.unique(cuts):
        own = np.flatnonzero(cuts == cells).tolist()
        grid = build_grid([stacks[i] for i in own], [draws[i] for i in own], cells=int(cells))
        _fill(found, grid, np.flatnonzero(np.repeat(cuts == cells, sizes)))
    return found


def _split(grid: Grid) -> int:
    """Into how many a step is split: the grid of thick moist stacks is stepped finer too."""
    return FINE_SPLIT if grid.cells == FINE_CELLS else 1


def _fill(found: Course, grid: Grid, rows: NDArray[np.int64]) -> None:
    """Solve the cases of a grid into the rows of a course that are theirs."""
    still = grid.start[:, None, :: grid.cells]
    for kind in (found.over, found.under, found.hottest):
        kind[rows, :, : grid.layers] = still
    for cases, part, some in _solved(grid, found.times[1:], _split(grid)):
        made, at = as_trace(part, found.times, some), rows[cases]
        found.over[at, :, : part.layers] = made.over
        found.under[at, :, : part.layers] = made.under
        found.hottest[at, :, : part.layers] = made.hottest


def _solved(
    grid: Grid, times: Floats, split: int
) -> Iterator[tuple[NDArray[np.int64], Grid, Floats]]:
    """Cases side by side with their part of the grid and its cells (b, K, n), the start first.

    Case by case, so that a stack's answer does not hang on the company it is solved in.
    """
    wet, deep = grid.moist, grid.depth
    for layers in np.unique(deep[~wet]):
        same = np.flatnonzero(~wet & (deep == layers))
        for first in range(0, len(same), _AT_ONCE):
            cases = same[first : first + _AT_ONCE]
            part = grid.only(cases).upper(int(layers))
            yield cases, part, _with_start(part.start, by_modes(part, times))
    if wet.any():
        cases = np.flatnonzero(wet)
        part = grid.only(cases).upper(int(deep[cases].max()))
        state = begin(part)
        start = state.temperature
        yield cases, part, _with_start(start, march(part, state, times, split=split)[0])


def _with_start(start: Floats, later: Floats) -> Floats:
    return np.concatenate([start[:, None], later], axis=1)


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
    return Trace(times, over, under, hottest, cells)


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


def between(times: Floats, course: Floats, second: float) -> Floats:
    """A course (B, K, L) read at one time."""
    after = int(np.clip(np.searchsorted(times, second), 1, len(times) - 1))
    span = times[after] - times[after - 1]
    part = float(np.clip((second - times[after - 1]) / span, 0.0, 1.0))
    read: Floats = course[:, after - 1] + part * (course[:, after] - course[:, after - 1])
    return read

"""The shortest lay, found and proved by a constraint solver: upright, turned and bias pieces.

Nothing here is shared with `advisor.craft`. Two rectangles, upright or at 45°, do not overlap
just where a line along a side of one of them parts them (separating axis theorem); for these
that is a line along x, y, x + y or y − x, so each pair is a choice of eight linear inequalities.
Sizes are whole numbers; a bias piece is taken a little too small, never too large (its half
sides over √2 are rounded down), so the optimum is never overstated by more than that.
"""

from __future__ import annotations

import itertools
import math
from dataclasses import dataclass

from ortools.sat.python import cp_model

Reach = tuple[tuple[cp_model.LinearExpr, ...], list[cp_model.LinearExpr]]
"""Centre and half reach of a piece along four axes."""
SCALE = 10


@dataclass(frozen=True)
class Lot:
    """A piece: across and along, whether it may turn a quarter, lies on the bias, its step."""

    width: int
    length: int
    turns: bool = False
    bias: bool = False
    step: int = 0
    at_fold: bool = False


def shortest(lots: list[Lot], across: int, seconds: float = 10.0) -> tuple[float, bool]:
    """The shortest length found in so many seconds, and whether it is proved shortest."""
    model = cp_model.CpModel()
    top = SCALE * sum(math.ceil((p.width + p.length) * 1.5) + p.step for p in lots)
    end = model.new_int_var(0, top, "end")
    reaches = [_reach(model, piece, i, across * SCALE, top, end) for i, piece in enumerate(lots)]
    for one, other in itertools.combinations(reaches, 2):
        _apart(model, one, other)
    if not any(piece.bias for piece in lots):
        area = sum(p.width * p.length for p in lots) * SCALE * SCALE
        model.add(end * across * SCALE >= area)
    model.minimize(end)
    solver = cp_model.CpSolver()
    solver.parameters.num_workers = 1
    solver.parameters.random_seed = 0
    solver.parameters.max_time_in_seconds = seconds
    state = solver.solve(model)
    assert state in (cp_model.OPTIMAL, cp_model.FEASIBLE)
    return solver.objective_value / SCALE, state == cp_model.OPTIMAL


def _reach(
    model: cp_model.CpModel, piece: Lot, i: int, across: int, top: int, end: cp_model.IntVar
) -> Reach:
    """Centre (doubled, on x, y, x + y, y − x) of a piece, and its half reach along each."""
    x = model.new_int_var(-top, 2 * top, f"x{i}")
    y = model.new_int_var(-top, 2 * top, f"y{i}")
    wide, long = piece.width * SCALE, piece.length * SCALE
    flipped = model.new_bool_var(f"turn{i}")
    if not (piece.turns or piece.bias):
        model.add(flipped == 0)
    if piece.bias:
        # Along u = x + y and v = y − x the sides are √2 times as long in these coordinates.
        span = math.floor((wide + long) / math.sqrt(2))
        u = [math.floor(wide * math.sqrt(2)), math.floor(long * math.sqrt(2))]
        halves = [(span, span), (span, span), (u[0], u[1]), (u[1], u[0])]
    else:
        both = (wide + long, wide + long)
        halves = [(wide, long), (long, wide), both, both]
    sizes = [a + flipped * (b - a) for a, b in halves]
    model.add(x >= sizes[0])
    model.add(x <= 2 * across - sizes[0])
    model.add(y >= sizes[1])
    model.add(2 * end >= y + sizes[1])
    if piece.at_fold:
        model.add(x == sizes[0])
    if piece.step:
        turns = model.new_int_var(0, top, f"step{i}")
        model.add(y - sizes[1] == 2 * piece.step * SCALE * turns)
    return (x, y, x + y, y - x), sizes


def _apart(model: cp_model.CpModel, one: Reach, other: Reach) -> None:
    """One of eight lines parts two pieces."""
    chosen = []
    for axis in range(4):
        room = one[1][axis] + other[1][axis]
        for first, second in ((one, other), (other, one)):
            lies = model.new_bool_var("")
            model.add(second[0][axis] - first[0][axis] >= room).only_enforce_if(lies)
            chosen.append(lies)
    model.add_bool_or(chosen)

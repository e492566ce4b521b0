"""Temperature against time drawn with letters, so that it is read without colour and aloud.

A small letter is a layer, from the iron down; a capital is the same layer past its limit; a line
of dashes is a limit. The course is straight between the computed seconds.
"""

from __future__ import annotations

import math
from itertools import pairwise

from advisor.answer.model.heat import ToldHeat, ToldLayerHeat
from advisor.answer.wording import degrees
from advisor.units import System

ROOM_C = 20.0
LAST_S = 20.0
_COLUMNS = 60
_MOST_ROWS = 13
_STEPS = (5.0, 10.0, 15.0, 20.0, 25.0)


def letters(one: ToldHeat) -> str:
    """A letter for each layer, from the iron down."""
    return "abcdefghijklmnopqrstuvwxyz"[: len(one.layers)]


def course(layer: ToldLayerHeat, end: int = 1) -> list[tuple[float, float]]:
    """The computed points of a layer, (s, °C), from the room's temperature on.

    `end` is 0 for the least, 1 for the likely, 2 for the most.
    """
    return [(0.0, ROOM_C), *((float(s), band[end]) for s, band in layer.at_s.items())]


def at(points: list[tuple[float, float]], second: float) -> float:
    """The temperature between two computed points, °C."""
    for (t0, c0), (t1, c1) in pairwise(points):
        if second <= t1:
            return c0 + (c1 - c0) * (second - t0) / (t1 - t0)
    return points[-1][1]


def top_of(one: ToldHeat) -> float:
    """The upper end of the picture, °C: over the hottest course and the limits near it."""
    hottest = max(course(layer)[-1][1] for layer in one.layers)
    near = [
        float(x.limit_c)
        for x in one.layers
        if x.limit_c is not None and x.limit_c <= hottest + 30.0
    ]
    return float(max([hottest, *near]) + 1.0)


def picture(one: ToldHeat, units: System) -> list[str]:
    """The likely course of every layer in the first 20 s, with the limits that lie in sight."""
    span = top_of(one) - ROOM_C
    step = next((s for s in _STEPS if span / s <= _MOST_ROWS), _STEPS[-1])
    rows = math.ceil(span / step)
    top = ROOM_C + rows * step
    cells = [[" "] * (_COLUMNS + 1) for _ in range(rows + 1)]

    def line(celsius: float) -> int:
        return min(rows, max(0, round((top - celsius) / step)))

    ends: dict[int, dict[str, str]] = {}
    for letter, layer in zip(letters(one), one.layers, strict=True):
        limit = layer.limit_c
        if limit is not None and ROOM_C < limit <= top:
            cells[line(limit)] = ["-"] * (_COLUMNS + 1)
            told = ends.setdefault(line(limit), {})
            told[degrees(limit, units)] = told.get(degrees(limit, units), "") + f"{letter} "
    for letter, layer in zip(letters(one), one.layers, strict=True):
        points = course(layer)
        for column in range(_COLUMNS + 1):
            warm = at(points, column * LAST_S / _COLUMNS)
            past = layer.limit_c is not None and warm >= layer.limit_c
            cell = cells[line(warm)]
            taken = cell[column] not in " -"
            cell[column] = "*" if taken else letter.upper() if past else letter
    lines = []
    for i, cell in enumerate(cells):
        mark = degrees(top - i * step, units).split()[0]
        who = ", ".join(f"{whose}{limit}" for limit, whose in ends.get(i, {}).items())
        label = f" limit {who}" if who else ""
        lines.append(f"    {mark:>4} |{''.join(cell)}{label}".rstrip())
    return [*lines, *_axis(one, units)]


def _axis(one: ToldHeat, units: System) -> list[str]:
    ticks = [" "] * (_COLUMNS + 8)
    for second in (0, 5, 10, 15, 20):
        place = int(second * _COLUMNS / LAST_S)
        ticks[place : place + len(str(second))] = str(second)
    names = ", ".join(
        f"{letter} {layer.name}" for letter, layer in zip(letters(one), one.layers, strict=True)
    )
    unit = "°F" if units == "us" else "°C"
    return [
        f"    {unit:>4} +{'-' * (_COLUMNS + 1)}",
        f"          {''.join(ticks).rstrip()} s",
        f"          {names}; a capital is past its limit, * is two layers",
    ]

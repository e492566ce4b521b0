"""Packing of a lot in which some pieces lie on the true bias, others upright.

Two such rectangles lie apart just where a line parts them that runs along a side of one, so
along x, y, x + y or y − x (separating axis theorem). For a given distance across the strip the
places along it that clash are therefore one interval, and a piece goes to the lowest gap. Places
across are tried at the edges, beside and against each other piece, and evenly between. Whole
numbers as in `strip`, with centres doubled; slanted reaches are rounded up, so nothing overlaps.
"""

from __future__ import annotations

import math
from collections.abc import Sequence
from functools import lru_cache
from typing import Final

from msgspec import Struct
from msgspec.structs import replace

from advisor.craft.orders import shortest
from advisor.craft.strip import FINE, Box, Packing, PlacedBox

ROOT2: Final = math.sqrt(2)
#: Even places across that are tried beside those that touch.
PLACES: Final = 12
#: Slanted lots are small and their placing takes long: fewer orders than for upright ones.
EFFORT: Final = 6_000

_Reach = tuple[int, int, int, int]
"""What a piece measures along x, y, x + y and y − x."""
_Spot = tuple[int, int, _Reach]


class _SlantedItem(Struct, frozen=True, order=True):
    length: int
    width: int
    ways: tuple[_Reach, ...]
    step: int
    at_edge: bool

    def lying(self) -> tuple[_SlantedItem, ...]:
        """The piece held to each of its ways."""
        if len(self.ways) == 1:
            return (self,)
        return tuple(replace(self, ways=(way,)) for way in self.ways)


def pack(boxes: Sequence[Box], strip_width: float) -> Packing:
    """A short strip of this width (mm) that holds all boxes, slanted ones at 45°.

    The places told are the upright rectangles around the pieces. Raises ValueError for a box
    that reaches further than the strip is wide.
    """
    across = math.floor(strip_width * FINE + 0.01)
    items = tuple(sorted((_item(box, across) for box in boxes), reverse=True))
    length, spots = _shortest(items, across)
    return Packing(length / FINE, tuple(_placed(spot) for spot in spots))


def _placed(spot: _Spot) -> PlacedBox:
    x, y, (wide, long, along, against) = spot
    upright = along == against == wide + long
    down = 0.0 if upright else along / 2 / FINE
    return PlacedBox((x - wide) / 2 / FINE, (y - long) / 2 / FINE, wide / FINE, long / FINE, down)


def _item(box: Box, across: int) -> _SlantedItem:
    wide, long = (math.ceil(value * FINE - 0.01) for value in (box.width, box.length))
    if box.slanted:
        span = math.ceil((wide + long) / ROOT2 - 0.01)
        one, other = math.ceil(wide * ROOT2), math.ceil(long * ROOT2)
        both_ways = ((1, (span, span, one, other)), (-1, (span, span, other, one)))
        ways = {way for leans, way in both_ways if box.leans in (0, leans)}
        if box.within < math.inf:
            ways = {(min(way[0], across), *way[1:]) for way in ways}
    else:
        both = wide + long
        ways = {(wide, long, both, both)}
        if box.turns:
            ways.add((long, wide, both, both))
    fits = tuple(sorted(way for way in ways if way[0] <= across))
    if not fits:
        raise ValueError(f"a box {box.width:g} × {box.length:g} does not fit the strip")
    return _SlantedItem(fits[0][1], fits[0][0], fits, round(box.step * FINE), box.at_edge)


@lru_cache(maxsize=128)
def _shortest(items: tuple[_SlantedItem, ...], across: int) -> tuple[int, tuple[_Spot, ...]]:
    floor = max(min(way[1] for way in item.ways) for item in items)
    return shortest(items, lambda order, below: _place(order, across, below), floor, EFFORT)


def _place(
    order: tuple[_SlantedItem, ...], across: int, below: int | None
) -> tuple[int, tuple[_Spot, ...]] | None:
    spots: list[_Spot] = []
    end = 0
    for item in order:
        tops = (
            (y + way[1], x, y, way)
            for way in item.ways
            for x in _centres(way, item.at_edge, spots, across)
            for y in (_lowest(x, way, item.step, spots),)
        )
        top, x, y, way = min(tops)
        end = max(end, -(-top // 2))
        if below is not None and end >= below:
            return None
        spots.append((x, y, way))
    return end, tuple(spots)


def _centres(way: _Reach, at_edge: bool, spots: list[_Spot], across: int) -> set[int]:
    """Doubled centres across: at the edges, beside or against another piece, evenly between."""
    first, last = way[0], 2 * across - way[0]
    if at_edge:
        return {first}
    found = {first, last, *range(first, last, max(1, (last - first) // PLACES))}
    for x, y, reach in spots:
        beside = way[0] + reach[0]
        down = way[1] - y
        along, against = way[2] + reach[2], way[3] + reach[3]
        found |= {x - beside, x + beside}
        # Standing at the beginning of the strip and leaning against the other one.
        found |= {x + along - down, x - along - down, x + against + down, x - against + down}
    return {x for x in found if first <= x <= last}


def _lowest(x: int, way: _Reach, step: int, spots: list[_Spot]) -> int:
    """The lowest doubled centre along the strip that clashes with nothing."""
    taken = []
    for other_x, other_y, reach in spots:
        off = x - other_x
        if abs(off) >= way[0] + reach[0]:
            continue
        straight, along, against = way[1] + reach[1], way[2] + reach[2], way[3] + reach[3]
        low = max(-straight, -along - off, off - against)
        high = min(straight, along - off, off + against)
        if low < high:
            taken.append((other_y + low, other_y + high))
    y = way[1]
    for low, high in sorted(taken):
        if y <= low:
            break
        if y < high:
            y = high
            if step:
                y = -(-(y - way[1]) // (2 * step)) * 2 * step + way[1]
    return y

"""Packing of upright boxes into a strip of one width, as short as is found.

A box goes to the lowest place where it fits, holes between other boxes included, and of those
to the one that ends soonest; from `MANY` boxes on into the lowest step of the outline (`skyline`).
Many orders of the boxes are tried, the better ones changed a little and tried again, until no
shorter strip is possible or the effort is spent. Every length told is that of a layout that exists,
so it is never short; nothing promises that it is the shortest. Against an exact solver on
500 random lots it lay 0.3 % over on average, 7.6 % at most (`tests/laws/test_lay_laws.py`). Whole
numbers of a ten-thousandth of a mm keep sixteenths of an inch exact.
"""

from __future__ import annotations

import bisect
import math
from collections.abc import Sequence
from functools import lru_cache, partial
from typing import Final

from msgspec import Struct
from msgspec.structs import replace

from advisor.craft.orders import MOST_ORDERS, shortest
from advisor.craft.skyline import lay

#: Units of the packing in a mm.
FINE: Final = 10_000
MANY: Final = 8
"""From how many boxes on more orders are worth more than the holes between them (measured)."""
VERY_MANY: Final = 120
"""From how many on no hole is looked for at all, which costs the cube of their number."""
ORDERS: Final = 800
EFFORT: Final = 320_000
"""How many orders are tried from `MANY` boxes on, and of very many fewer."""


class Box(Struct, frozen=True, order=True):
    """A box to pack, in mm: across the strip, and along it.

    `turns` lets it lie either way; `step` lets it begin only at multiples of that length;
    `at_edge` keeps it at the left edge of the strip, where a cloth is folded; `slanted` lays its
    length at 45° (see `slanted`), and `leans` says to which side, 1 or -1; 0 to either; `within` is
    how far it may reach across, where its two furthest corners are cut off along the grain.
    """

    width: float
    length: float
    turns: bool = False
    step: float = 0.0
    at_edge: bool = False
    slanted: bool = False
    leans: int = 0
    within: float = math.inf


class PlacedBox(Struct, frozen=True):
    """Where a box lies, in mm: its corner nearest to the beginning, and its size as it lies.

    `down` is nothing for an upright one; of one on the bias it is how far the side that leads
    away from the beginning and from the edge reaches along the cloth.
    """

    x: float
    y: float
    width: float
    length: float
    down: float = 0.0


class Packing(Struct, frozen=True):
    """A strip that holds all boxes: its length in mm, and where each lies."""

    length: float
    places: tuple[PlacedBox, ...]


class _Item(Struct, frozen=True, order=True):
    length: int
    width: int
    ways: tuple[tuple[int, int], ...]
    step: int
    at_edge: bool

    def lying(self) -> tuple[_Item, ...]:
        """The piece held to each of its ways."""
        if len(self.ways) == 1:
            return (self,)
        return tuple(replace(self, ways=(way,)) for way in self.ways)


_Spot = tuple[int, int, int, int]
_Laid = tuple[int, tuple[_Spot, ...]]


def pack(boxes: Sequence[Box], strip_width: float) -> Packing:
    """A short strip of this width (mm) that holds all boxes.

    Raises ValueError for a box wider than the strip whichever way it lies.
    """
    if not boxes:
        return Packing(0.0, ())
    across = math.floor(strip_width * FINE + 0.01)
    items = tuple(sorted((_item(box, across, strip_width) for box in boxes), reverse=True))
    length, spots = _shortest(items, across)
    return Packing(
        length / FINE,
        tuple(
            PlacedBox(x / FINE, y / FINE, wide / FINE, long / FINE) for y, x, wide, long in spots
        ),
    )


def _item(box: Box, across: int, strip_width: float) -> _Item:
    width, length = _fine(box.width), _fine(box.length)
    ways = {(width, length), (length, width)} if box.turns else {(width, length)}
    # A piece as wide as the strip fits it, though one is rounded up and the other down.
    ways = {(across if way[0] == across + 1 else way[0], way[1]) for way in ways}
    fits = tuple(sorted(way for way in ways if way[0] <= across))
    if not fits:
        raise ValueError(f"a box {box.width:g} wide is wider than the strip, {strip_width:g}")
    return _Item(fits[0][1], fits[0][0], fits, round(box.step * FINE), box.at_edge)


def _fine(value: float) -> int:
    return math.ceil(value * FINE - 0.01)


def floor_of(sizes: Sequence[tuple[int, int]], across: int) -> int:
    """A length that no strip of upright boxes (width, length) can beat.

    The longest box; the area; and for every width k up to half the strip, the area where a box
    wider than the strip less k counts as wide as the strip, and one narrower than k not at all.
    """
    best = max(length for _, length in sizes)
    for k in {0, *(width for width, _ in sizes if 2 * width <= across), across // 2}:
        area = 0
        for width, length in sizes:
            if width > across - k:
                area += across * length
            elif width >= k:
                area += width * length
        best = max(best, -(-area // across))
    return best


@lru_cache(maxsize=512)
def _shortest(items: tuple[_Item, ...], across: int) -> _Laid:
    least = _least(items, across)
    found = []
    if len(items) >= MANY:
        outlined = partial(lay, across)
        found.append(shortest(items, outlined, least, EFFORT, ORDERS))
    if len(items) < MANY or (len(items) < VERY_MANY and any(_awkward(item) for item in items)):
        orders = MOST_ORDERS if len(items) < MANY else MOST_ORDERS // 4
        found.append(shortest(items, partial(_place, across), least, most=orders))
    return min(found, key=lambda laid: laid[0])


def _awkward(item: _Item) -> bool:
    """Whether it may turn, or begins only at some places: then either way of laying may do."""
    return len(item.ways) > 1 or item.step > 0


def _least(items: tuple[_Item, ...], across: int) -> int:
    """The length that no packing beats; a box that turns counts at its better way, by area too."""
    if all(len(item.ways) == 1 for item in items):
        return floor_of([item.ways[0] for item in items], across)
    area = sum(item.width * item.length for item in items)
    return max(-(-area // across), *(min(way[1] for way in item.ways) for item in items))


def _place(across: int, order: tuple[_Item, ...], below: int | None) -> _Laid | None:
    """All boxes one after another, each where it ends soonest; None once as long as `below`."""
    spots: list[_Spot] = []  # always from the beginning of the strip on
    end = 0
    for item in order:
        y, x, (wide, long) = _soonest(item, spots, across)
        end = max(end, y + long)
        if below is not None and end >= below:
            return None
        bisect.insort(spots, (y, x, wide, long))
    return end, tuple(spots)


def _soonest(item: _Item, spots: list[_Spot], across: int) -> tuple[int, int, tuple[int, int]]:
    """Where a box ends soonest, and which way it lies there; of equals the leftmost."""
    best: tuple[int, int, int, tuple[int, int]] | None = None
    for way in item.ways:
        wide, long = way
        for x in _lefts(wide, item, spots, across):
            y = _lowest(x, way, item.step, spots)
            if best is None or (y + long, x, y, way) < best:
                best = (y + long, x, y, way)
    assert best is not None
    return best[2], best[1], best[3]


def _lefts(wide: int, item: _Item, spots: list[_Spot], across: int) -> set[int]:
    """Where the left side of a box may lie: at an edge of the strip or beside another box."""
    if item.at_edge:
        return {0}
    sides = {0, across - wide}
    for _, x, width, _ in spots:
        sides.add(x + width)
        sides.add(x - wide)
    return {x for x in sides if 0 <= x <= across - wide}


def _lowest(x: int, way: tuple[int, int], step: int, spots: list[_Spot]) -> int:
    """The lowest place of a box whose left side is given, between those that lie there."""
    wide, long = way
    right = x + wide
    y = 0
    for low, left, width, length in spots:
        if left >= right or left + width <= x:
            continue
        if y + long <= low:
            break
        if low + length > y:
            y = low + length
            if step:
                y = -(-y // step) * step
    return y

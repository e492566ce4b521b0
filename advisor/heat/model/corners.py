"""The corners of what is uncertain: all properties at once at the end that makes a layer hot, or
cold, so that least and most are the least and the most of the ranges stated.

Dry, from one temperature, under a steady sole, every layer only warms and heat only flows down;
then (maximum principle, derived) the upper face of a layer, which is its hottest place, is the
hotter at any moment

* the hotter the sole and the closer it lies on the cloth;
* the less heat any layer takes up (specific heat and weight);
* the better heat comes down to it: layers above thin and conducting, their joints close;
* the worse it goes on: the layer itself and those below thick and badly conducting, their joints
  loose.  That holds at first; later, when what lies below fills up, it may pay to fill it sooner
  (measured: up to 0.2 K), so each depth is taken down to which all passes heat on well.

So each layer has hot corners and cold ones.  Of thousands of draws at random and at the ends the
hottest passed them by 0.3 K dry; both ends of a band are widened by PASSED_K for that.  With
water the law does not hold: steam and driven-off vapour bring a layer to boiling point sooner,
and their water keeps it there longer.  There each corner is taken with several ways of the water
to lie; draws passed them by 1.6 K, and the ends are widened by PASSED_WET_K.

A rest has corners of its own: what cools slowest was heated well and holds much.
"""

from __future__ import annotations

from collections.abc import Iterator

import numpy as np

from advisor.heat.model.grid import Floats
from advisor.heat.model.stack import Stack

# Water above the layer, its own and that below, steam, vapour going down: -1 least, 1 most.
HOT_WAYS = (
    (-1.0, -1.0, -1.0, -1.0),
    (-1.0, -1.0, 1.0, -1.0),
    (-1.0, -1.0, 1.0, 1.0),
    (1.0, -1.0, 1.0, 1.0),
)
COLD_WAYS = ((1.0, 1.0, -1.0, -1.0), (1.0, 1.0, 1.0, -1.0), (1.0, 1.0, 1.0, 1.0))
PASSED_K, PASSED_WET_K = 0.5, 2.0


def passed_by(stack: Stack) -> float:
    """By how many kelvins a draw may still pass the corners, by which the ends are widened."""
    if not free_of(stack).any():
        return 0.0
    return PASSED_WET_K if stack.moist else PASSED_K


def corners_of(stack: Stack) -> Floats:
    """The draws (corners, properties) at the corners of all layers but the board's."""
    free = free_of(stack)
    moist = stack.moist
    found: dict[bytes, Floats] = {}
    for place, layer in enumerate(stack.layers):
        if layer.role != "board":
            for draw in _corners_of_layer(place, len(stack.layers), moist):
                found.setdefault((draw * free).tobytes(), draw * free)
    return np.array(list(found.values())).reshape(-1, free.size)


def rest_corners_of(stack: Stack) -> Floats:
    """The draws (corners, properties) that cool slowest or soonest after a press.

    Slowest: a hot sole close to the cloth, and down to some depth layers that take heat up well
    and hold much of it; soonest the other way round.  With water each with most of it and least.
    """
    free, layers = free_of(stack), len(stack.layers)
    found: dict[bytes, Floats] = {}
    for depth in range(layers + 1):
        for side in (1.0, -1.0):
            for wet in (1.0, -1.0) if stack.moist else (0.0,):
                draw = _rest_corner(depth, layers, side, wet) * free
                found.setdefault(draw.tobytes(), draw)
    return np.array(list(found.values())).reshape(-1, free.size)


def _rest_corner(depth: int, layers: int, side: float, wet: float) -> Floats:
    """Layers above ``depth`` pass heat on well and hold much (side 1) or badly and little."""
    parts = [np.array((side, -side, 0.0, wet, wet))]
    for at in range(layers):
        eases = side if at < depth else -side
        parts.append(np.array((-eases, eases, eases, wet, -eases)))
    return np.concatenate(parts)


def _corners_of_layer(place: int, layers: int, moist: bool) -> Iterator[Floats]:
    """Hot and cold corners of one layer: how deep all passes heat on well, and the water."""
    depths = (place, layers) if moist else range(place, layers + 1)
    for depth in depths:
        easing = (1.0,) * depth + (-1.0,) * (layers - depth)
        for side, ways in ((1.0, HOT_WAYS), (-1.0, COLD_WAYS)):
            for way in ways if moist else ways[:1]:
                yield _corner(place, side, easing, way)


def _corner(place: int, side: float, easing: tuple[float, ...], way: tuple[float, ...]) -> Floats:
    """The corner where a layer is hottest (side 1) or coldest (-1), its water so or so."""
    above, below, steam, down = way
    parts = [np.array((side, -side, 0.0, steam, down))]
    for at, eased in enumerate(easing):
        eases = side * eased
        water = above if at < place else below
        parts.append(np.array((-eases, eases, -side, water, -eases)))
    return np.concatenate(parts)


def free_of(stack: Stack) -> Floats:
    """1 for each property that has a range, else 0."""
    down = stack.vapour_down if stack.moist else None
    bounds = [stack.sole, stack.sole_contact, None, stack.steam_gsm, down]
    for layer, joint in zip(stack.layers, (*stack.contacts, None), strict=True):
        bounds += [layer.thickness_mm, layer.conductivity, layer.specific_heat, layer.water_gsm]
        bounds.append(joint)
    return np.array([float(b is not None and b.low < b.high) for b in bounds])

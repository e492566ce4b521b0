"""Stacks cut into cells: the numbers that the solvers work on, many stacks side by side.

Every layer has the same number of cells, so that a whole garment's seams, and all samples of
their uncertain properties, lie in one array.  Shapes: B cases (stack times sample), L layers,
n cells in each, N = L n.  Shorter stacks are filled up below with cells that nothing reaches.

Finite volumes in one dimension (derived): a cell of thickness d, dry areal mass M and specific
heat c stores C = M c (J/(m2 K)); two neighbours pass g = 1 / (d1/2k1 + R + d2/2k2) (W/(m2 K)),
R the contact resistance where they belong to different layers.  At the top the sole's
temperature acts through g = 1 / (R_sole + d/2k); at the bottom the room's through
g = 1 / (1/h + d/2k), or not at all where the board counts as insulated.

A DRAW moves the uncertain properties: one number u from -1 (low) over 0 (mid) to 1 (high) for
each property of :func:`properties`.  What is shared by all joints and what one joint has of its
own ("contact below" a layer) add up, and stay within the range.
"""

from __future__ import annotations

from collections.abc import Sequence

import numpy as np
from msgspec import Struct
from msgspec.structs import asdict, replace
from numpy.typing import NDArray

from advisor.heat.model.materials import Range
from advisor.heat.model.stack import Stack

Floats = NDArray[np.float64]

NOTHING_KG = 1e-12  # per m2: less than this is no water, and no number to divide by
CELLS = 6
FINE_CELLS = 12
THICK_MM = 1.0  # from here a layer that may be moist is cut finer: a front of vapour is narrow
COARSE_MM = 0.25  # cells at the iron side of a thick layer are no thicker than this
SHARED = (
    "sole temperature",
    "contact with the sole",
    "contact between layers",
    "steam",
    "vapour going down",
)
PER_LAYER = ("thickness", "conductivity", "specific heat", "water", "contact below")


class Grid(Struct, frozen=True):
    """B cases as arrays: temperatures in degrees C, the rest per m2 in SI units.

    ``dry`` (B, N) heat capacity without water; ``water`` (B, N) kg/m2; ``binds`` (B, N) kg/m2, what
    the fibre holds in an ordinary room; ``start`` (B, N);
    ``half`` (B, N) resistance of half a cell; ``between`` (B, N-1) conductance to the next cell;
    ``top`` (B,) to the sole, ``back`` (B, N) to the room below; ``sole``, ``room``, ``steam``
    kg/m2, ``down``, ``flux`` W/m2 forced into the top (B,); ``layers`` L; ``cells`` n.
    """

    dry: Floats
    water: Floats
    binds: Floats
    start: Floats
    half: Floats
    between: Floats
    top: Floats
    back: Floats
    sole: Floats
    room: Floats
    steam: Floats
    down: Floats
    flux: Floats
    layers: int
    cells: int

    @property
    def moist(self) -> NDArray[np.bool_]:
        """Which cases (B,) hold water or are given steam."""
        wet: NDArray[np.bool_] = self.water.any(axis=1) | (self.steam > 0.0)
        return wet

    @property
    def depth(self) -> NDArray[np.int64]:
        """How many layers each case (B,) truly has, without what fills it up."""
        ends = self.between[:, self.cells - 1 :: self.cells] > 0.0
        deep: NDArray[np.int64] = 1 + ends.sum(axis=1)
        return deep

    def upper(self, layers: int) -> Grid:
        """The grid of the upper layers alone, for cases with no more than these."""
        size = layers * self.cells
        return replace(
            self,
            dry=self.dry[:, :size],
            water=self.water[:, :size],
            binds=self.binds[:, :size],
            start=self.start[:, :size],
            half=self.half[:, :size],
            back=self.back[:, :size],
            between=self.between[:, : size - 1],
            layers=layers,
        )

    def only(self, cases: NDArray[np.int64] | NDArray[np.bool_]) -> Grid:
        """The grid of those cases alone."""
        kept = {
            name: value[cases]
            for name, value in asdict(self).items()
            if name not in ("layers", "cells")
        }
        return replace(self, **kept)


def properties(stack: Stack) -> tuple[str, ...]:
    """The names of a stack's uncertain properties, in the order of a draw's numbers."""
    own = (f"{what} of {layer.name}" for layer in stack.layers for what in PER_LAYER)
    return (*SHARED, *own)


def cells_for(stack: Stack) -> int:
    """Into how many cells each layer of a stack is cut."""
    thick = any(x.thickness_mm.mid >= THICK_MM for x in stack.layers if x.role != "board")
    return FINE_CELLS if thick and stack.moist else CELLS


def build_grid(
    stacks: Sequence[Stack],
    draws: Sequence[Floats] | None = None,
    *,
    cells: int = CELLS,
    even: bool = False,
) -> Grid:
    """The grid of all stacks, each as often as it has draws (once, at the mid values, without).

    ``draws`` holds for each stack an array (samples, properties).  ``even`` makes all cells of
    a layer equally thick; otherwise thick layers are finer towards the iron.
    """
    deepest = max(len(stack.layers) for stack in stacks)
    if draws is None:
        draws = [np.zeros((1, len(properties(stack)))) for stack in stacks]
    blocks = [
        _block(stack, draw, deepest, cells, even) for stack, draw in zip(stacks, draws, strict=True)
    ]
    joined = {name: np.concatenate([block[name] for block in blocks]) for name in blocks[0]}
    return Grid(**joined, layers=deepest, cells=cells)


def _block(stack: Stack, draw: Floats, deepest: int, cells: int, even: bool) -> dict[str, Floats]:
    """One stack's rows of the grid."""
    samples, size = draw.shape[0], deepest * cells
    dry, half = np.ones((samples, size)), np.ones((samples, size))
    water, start = np.zeros((samples, size)), np.full((samples, size), stack.ambient_c)
    binds = np.zeros((samples, size))
    gap = np.full((samples, size - 1), np.inf)  # an endless gap parts the filling cells
    for place, layer in enumerate(stack.layers):
        at = slice(place * cells, (place + 1) * cells)
        thick, k, heat, wet = (
            _value(bounds, draw[:, len(SHARED) + place * len(PER_LAYER) + i])[:, None]
            for i, bounds in enumerate(
                (layer.thickness_mm, layer.conductivity, layer.specific_heat, layer.water_gsm)
            )
        )
        share = _shares(layer.thickness_mm.mid, cells, even)
        dry[:, at] = share * layer.mass_gsm / 1000.0 * heat
        water[:, at] = share * wet / 1000.0
        held = share * layer.binds_gsm / 1000.0
        binds[:, at] = np.where(held > NOTHING_KG, held, 0.0)
        half[:, at] = share * thick / 1000.0 / k / 2.0
        gap[:, place * cells : (place + 1) * cells - 1] = 0.0
        if stack.starts_c is not None:
            start[:, at] = stack.starts_c[place]
        if place:
            own = draw[:, len(SHARED) + place * len(PER_LAYER) - 1]  # of the layer above
            both = np.clip(draw[:, 2] + own, -1.0, 1.0)
            gap[:, place * cells - 1] = _value(stack.contacts[place - 1], both)
    back = np.zeros((samples, size))
    if stack.back_h > 0.0:
        last = len(stack.layers) * cells - 1
        back[:, last] = 1.0 / (1.0 / stack.back_h + half[:, last])
    return {
        "dry": dry,
        "water": water,
        "binds": binds,
        "start": start,
        "half": half,
        "between": 1.0 / (half[:, :-1] + gap + half[:, 1:]),
        "top": 1.0 / (_value(stack.sole_contact, draw[:, 1]) + half[:, 0]),
        "back": back,
        "sole": _value(stack.sole, draw[:, 0]),
        "room": np.full(samples, stack.ambient_c),
        "steam": _value(stack.steam_gsm, draw[:, 3]) / 1000.0,
        "down": _value(stack.vapour_down, draw[:, 4]),
        "flux": np.zeros(samples),
    }


def _value(bounds: Range, u: Floats) -> Floats:
    """The property at each draw: straight from low to mid and from mid to high."""
    below, above = bounds.mid - bounds.low, bounds.high - bounds.mid
    return bounds.mid + np.where(u < 0.0, below, above) * u


def _shares(thickness_mm: float, cells: int, even: bool) -> Floats:
    """The part of a layer's thickness that each cell takes, from the iron side; sums to 1."""
    first = COARSE_MM / thickness_mm
    if even or first >= 1.0 / cells:
        return np.full(cells, 1.0 / cells)
    low, high = 1.0, 1.0 / first
    for _ in range(60):
        ratio = (low + high) / 2.0
        total = first * _powers(ratio, cells).sum()
        low, high = (ratio, high) if total < 1.0 else (low, ratio)
    parts = _powers(low, cells)
    shares: Floats = parts / parts.sum()
    return shares


def _powers(ratio: float, count: int) -> Floats:
    """1, ratio, its square and so on, by products alone: alike on every machine."""
    return np.cumprod(np.append(1.0, np.full(count - 1, ratio)))

"""From a finished edge to the cloth cut for it: gathers, tucks, flounces, panels, tiers.

Fullness by cloth: `trade-fullness`, `trade-gather-ratio`; bias ruffle and tucks
`clothing-text-1916`; panels and cut length `derived` (the usual textbook form). Pleats have
their own module, `pleats`. Lengths may be in any one unit unless a name ends in mm.
"""

from __future__ import annotations

import math
from collections.abc import Sequence
from enum import StrEnum
from typing import Final

from msgspec import Struct

from advisor.craft import checks

SOURCES: Final[tuple[str, ...]] = (
    "trade-fullness",
    "trade-gather-ratio",
    "clothing-text-1916",
    "trade-differential-feed",
    "derived",
    "memory",
)


class Weight(StrEnum):
    """Weight class of a cloth, as far as gathering goes."""

    SHEER = "sheer"
    LIGHT = "light"
    MEDIUM = "medium"
    HEAVY = "heavy"


class GatherMethod(StrEnum):
    """How fullness is drawn up."""

    ROWS = "rows of long stitches"
    FOOT = "gathering foot"
    OVERLOCK = "overlock differential feed"
    ELASTIC = "elastic"


class Ratio(Struct, frozen=True):
    """A usual ratio cut : finished, from low to high."""

    low: float
    high: float
    sources: tuple[str, ...]


GATHER_RATIOS: Final[dict[Weight, Ratio]] = {
    Weight.SHEER: Ratio(3.0, 4.0, ("trade-fullness",)),
    Weight.LIGHT: Ratio(2.5, 3.0, ("memory", "trade-fullness")),
    Weight.MEDIUM: Ratio(2.0, 2.0, ("trade-fullness",)),
    Weight.HEAVY: Ratio(1.5, 1.5, ("trade-fullness", "trade-gather-ratio")),
}
BIAS_RUFFLE: Final = Ratio(1.25, 4 / 3, ("clothing-text-1916",))
STRAIGHT_RUFFLE: Final = Ratio(1.5, 1.5, ("clothing-text-1916",))
#: What each way usually reaches; a foot cannot be set to a ratio, so it wants a test strip.
METHOD_RATIOS: Final[dict[GatherMethod, Ratio]] = {
    GatherMethod.ROWS: Ratio(1.0, 4.0, ("trade-fullness",)),
    GatherMethod.FOOT: Ratio(1.5, 2.0, ("memory",)),
    GatherMethod.OVERLOCK: Ratio(1.5, 2.0, ("trade-differential-feed",)),
    GatherMethod.ELASTIC: Ratio(1.25, 2.0, ("memory",)),
}


def gather_ratio(weight: Weight) -> Ratio:
    """The usual fullness of a cloth: the lighter, the more."""
    return GATHER_RATIOS[weight]


def cut_width(finished: float, ratio: float) -> float:
    """Width to cut for a finished edge: edge × fullness, seams not counted."""
    return checks.above("finished edge", finished) * checks.at_least("fullness", ratio, 1)


def tucks(depth: float, number: int, spacing: float | None = None) -> float:
    """Extra cloth for tucks: 2 × depth × number.

    `spacing` is the distance from tuck to tuck; a tuck deeper than that is refused.
    """
    deep = checks.above("tuck depth", depth)
    if spacing is not None and deep > checks.above("spacing", spacing):
        raise ValueError(f"a tuck {depth:g} deep is deeper than its spacing {spacing:g}")
    return 2 * deep * checks.count("number of tucks", number)


class FlounceCut(Struct, frozen=True):
    """A circular flounce: radii and hem length, fullness at the hem, square that holds it."""

    inner_radius: float
    outer_radius: float
    hem_length: float
    hem_fullness: float
    square: float
    sources: tuple[str, ...] = ("derived", "clothing-text-1916")


def flounce(seam: float, depth: float, *, pieces: int = 1, turn: float = 1.0) -> FlounceCut:
    """A flounce cut from rings so that it lies flat at its seam and ripples at its hem.

    `seam` is the seam length to cover, `depth` the width of the ring, `pieces` how many
    rings share the seam, `turn` the share of a circle that each is (1 = full circle).
    """
    if not 0 < checks.finite("share of a circle", turn) <= 1:
        raise ValueError(f"share of a circle must be above 0 and at most 1, not {turn:g}")
    angle = 2 * math.pi * turn * checks.count("pieces", pieces)
    inner = checks.above("seam length", seam) / angle
    outer = inner + checks.above("depth", depth)
    return FlounceCut(inner, outer, angle * outer, outer / inner, 2 * outer)


def hem_surplus(depth: float, radius: float) -> float:
    """What the raw edge of a hem turned up on a curve has too much: 2 × depth / (radius − depth).

    It is cut at radius + depth and comes to lie at radius − depth, `radius` being that of the
    finished edge between them; the share is of the line that it is sewn to (`derived`). A hem as
    deep as the radius has no such line.
    """
    deep = checks.at_least("hem depth", depth, 0)
    line = checks.above("radius of the edge", radius) - deep
    return 2 * deep / line if line > 0 else math.inf


def deepest_hem(radius: float, eases: float) -> float:
    """The deepest hem on a curve whose surplus a cloth eases in: radius × share / (2 + share)."""
    share = checks.share("share eased", eases)
    return checks.above("radius of the edge", radius) * share / (2 + share)


def ruffle_depth(finished: float, hem: float, seam: float, *, doubled: bool = False) -> float:
    """Depth to cut a ruffle: finished + hem + seam; doubled, twice finished and seam."""
    deep = checks.above("finished depth", finished)
    edge = checks.at_least("seam", seam, 0)
    return 2 * (deep + edge) if doubled else deep + checks.at_least("hem", hem, 0) + edge


def cut_length(
    finished: float, hem: float, seam: float, *, turn: float = 0.0, shrinkage: float = 0.0
) -> float:
    """Length to cut: (finished + hem + seam + turn of cloth) / (1 − shrinkage)."""
    whole = (
        checks.above("finished length", finished)
        + checks.at_least("hem", hem, 0)
        + checks.at_least("seam", seam, 0)
        + checks.at_least("turn of cloth", turn, 0)
    )
    return whole / (1 - checks.share("shrinkage", shrinkage))


class Panels(Struct, frozen=True):
    """Panels for a full edge: how many, how wide with seams, the fullness they give."""

    number: int
    panel_width: float
    needed_width: float
    fullness: float
    fullness_at_full_width: float
    sources: tuple[str, ...] = ("derived", "memory")


def panels(
    finished: float, ratio: float, cloth_width: float, seam: float, number: int | None = None
) -> Panels:
    """Panels around a finished edge, joined in the round.

    Needed = edge × fullness + 2 seams; number = that ÷ (cloth width − 2 seams), rounded up,
    unless given. Raises TooWideError when a panel would be wider than the cloth.
    """
    full = cut_width(finished, ratio)
    edges = 2 * checks.at_least("seam", seam, 0)
    net = checks.above("cloth width", cloth_width) - edges
    if net <= 0:
        raise ValueError(f"a cloth {cloth_width:g} wide is used up by its seams of {seam:g}")
    needed = full + edges
    pieces = checks.up(needed / net) if number is None else checks.count("panels", number)
    wide = full / pieces + edges
    if wide > cloth_width * (1 + 1e-9):
        raise checks.TooWideError(wide, cloth_width)
    return Panels(pieces, wide, needed, ratio, pieces * net / finished)


def tiers(first_edge: float, ratios: Sequence[float], *, seam: float = 0.0) -> tuple[float, ...]:
    """Cut widths of a tiered skirt, top first: each tier is the one above × its fullness.

    `seam` is what the seams of a tier take in all; it is cut with the tier and, as the trade
    does it, multiplied on into the next.
    """
    widths: list[float] = []
    edge = checks.above("first edge", first_edge)
    for ratio in ratios:
        edge = cut_width(edge, ratio) + checks.at_least("seam", seam, 0)
        widths.append(edge)
    return tuple(widths)

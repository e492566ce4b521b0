"""How much of a cloth to buy for its pieces: a strip-packing estimate.

Pieces are taken as rectangles (or tapered panels) with the grain along the length. A piece
is never turned a quarter unless it allows any grain; tapered panels are turned end for end
only on a cloth without one-way nap. Packing is done with a kept library (`rectpack`),
several orders are tried and the shortest layout counts. The result is an `estimate`: a real
lay may be a little shorter or longer, and adding a little to one piece can shift the
layout. Length and shrinkage `derived`; rounding up as shops sell `common-practice`.
"""

from __future__ import annotations

import itertools
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from typing import Final

from advisor.craft import checks
from advisor.craft.strip import Box, pack

SOURCES: Final[tuple[str, ...]] = ("derived", "estimate", "common-practice", "memory")

METRIC_STEP_MM: Final = 100.0
US_STEP_MM: Final = 36 * 25.4 / 8
#: Above so many kinds of any-grain pieces, they are all turned together or not at all.
FREE_TURNS: Final = 3


@dataclass(frozen=True, slots=True)
class Piece:
    """A piece to cut, in mm: width across the grain, length along it, how many.

    `narrow_mm` is the width of the narrow end of a tapered panel; `any_grain` lets it turn a
    quarter; `matched` lets it begin only where the repeat does.
    """

    width_mm: float
    length_mm: float
    count: int = 1
    any_grain: bool = False
    narrow_mm: float | None = None
    matched: bool = False

    def __post_init__(self) -> None:
        checks.above("piece width", self.width_mm)
        checks.above("piece length", self.length_mm)
        checks.count("pieces", self.count)
        if self.narrow_mm is not None and not 0 <= self.narrow_mm <= self.width_mm:
            raise ValueError(
                f"the narrow end of a piece, {self.narrow_mm:g}, must lie between 0 and "
                f"its width, {self.width_mm:g}"
            )

    @property
    def area_mm2(self) -> float:
        """Cloth in one such piece, its taper counted."""
        narrow = self.width_mm if self.narrow_mm is None else self.narrow_mm
        return (self.width_mm + narrow) / 2 * self.length_mm


@dataclass(frozen=True, slots=True)
class Cloth:
    """A cloth as bought: width in mm, nap, repeat in mm, selvage each side, shrinkage shares."""

    width_mm: float
    one_way: bool = False
    repeat_mm: float = 0.0
    selvage_mm: float = 0.0
    shrinks_long: float = 0.0
    shrinks_wide: float = 0.0

    def __post_init__(self) -> None:
        checks.above("cloth width", self.width_mm)
        checks.at_least("repeat", self.repeat_mm, 0)
        checks.share("shrinkage along", self.shrinks_long)
        checks.share("shrinkage across", self.shrinks_wide)
        if 2 * checks.at_least("selvage", self.selvage_mm, 0) >= self.width_mm:
            raise ValueError(f"selvages of {self.selvage_mm:g} leave nothing of the cloth")

    @property
    def usable_mm(self) -> float:
        """Width to cut from, once pre-shrunk and without selvages."""
        return (self.width_mm - 2 * self.selvage_mm) * (1 - self.shrinks_wide)


@dataclass(frozen=True, slots=True)
class Estimate:
    """Cloth to buy in mm, an estimate: packed, with shrinkage and repeats, never below least.

    `packed_mm` is the layout alone; `least_mm` the length no layout can beat; `used` the
    share of the packed cloth that ends in the pieces.
    """

    length_mm: float
    buy_metric_mm: float
    buy_us_mm: float
    packed_mm: float
    least_mm: float
    used: float
    kind: str = "estimate"
    sources: tuple[str, ...] = SOURCES


def round_up_to_shop(length_mm: float, step_mm: float = METRIC_STEP_MM) -> float:
    """A length in mm rounded up to what shops sell: 0.1 m unless told, or 1/8 yd."""
    step = checks.above("selling step", step_mm)
    return checks.up(checks.at_least("length", length_mm, 0) / step) * step


def estimate(pieces: Sequence[Piece], cloth: Cloth) -> Estimate:
    """The cloth to buy for some pieces.

    Raises ValueError without pieces, or when a piece is wider than the usable cloth.
    """
    if not pieces:
        raise ValueError("no pieces to lay out")
    for piece in pieces:
        _fits(piece, cloth.usable_mm)
    packed = min(pack(boxes, cloth.usable_mm) for boxes in _ways(pieces, cloth))
    matched = sum(piece.count for piece in pieces if piece.matched)
    repeats = cloth.repeat_mm * max(0, matched - 1)
    length = (packed + repeats) / (1 - cloth.shrinks_long)
    area = sum(piece.area_mm2 * piece.count for piece in pieces)
    return Estimate(
        length_mm=length,
        buy_metric_mm=round_up_to_shop(length),
        buy_us_mm=round_up_to_shop(length, US_STEP_MM),
        packed_mm=packed,
        least_mm=least(pieces, cloth),
        used=min(1.0, area / (packed * cloth.usable_mm)),
    )


def least(pieces: Sequence[Piece], cloth: Cloth) -> float:
    """The length in mm that no layout can beat: the longest piece, or the area over the width."""
    area = sum(piece.area_mm2 * piece.count for piece in pieces)
    longest = max(
        min(piece.width_mm, piece.length_mm) if piece.any_grain else piece.length_mm
        for piece in pieces
    )
    return max(longest, area / cloth.usable_mm)


def _fits(piece: Piece, usable: float) -> None:
    across = min(piece.width_mm, piece.length_mm) if piece.any_grain else piece.width_mm
    if across > usable * (1 + 1e-9):
        raise ValueError(f"a piece {across:g} mm wide is wider than the cloth, {usable:g} mm")


def _ways(pieces: Sequence[Piece], cloth: Cloth) -> Iterator[list[Box]]:
    """Every reading of the pieces as boxes: quarter turns, and panels turned end for end."""
    free = [place for place, piece in enumerate(pieces) if piece.any_grain]
    if len(free) <= FREE_TURNS:
        turns = list(itertools.product((False, True), repeat=len(free)))
    else:
        turns = [(False,) * len(free), (True,) * len(free), _lying(pieces, free)]
    for turn in turns:
        turned = dict(zip(free, turn, strict=True))
        for pairing in (False,) if cloth.one_way else (False, True):
            boxes = [
                box
                for place, piece in enumerate(pieces)
                for box in _boxes(piece, turned.get(place, False), pairing, cloth.usable_mm)
            ]
            if all(box.width <= cloth.usable_mm * (1 + 1e-9) for box in boxes):
                yield boxes


def _lying(pieces: Sequence[Piece], free: list[int]) -> tuple[bool, ...]:
    """Short side across the cloth: with every piece checked, this way always fits."""
    return tuple(pieces[place].width_mm > pieces[place].length_mm for place in free)


def _boxes(piece: Piece, turned: bool, pairing: bool, usable: float) -> list[Box]:
    if turned:
        return [Box(piece.length_mm, piece.width_mm)] * piece.count
    single = Box(piece.width_mm, piece.length_mm)
    if not pairing or piece.narrow_mm is None:
        return [single] * piece.count
    # Two tapered panels head to tail make a parallelogram; its outer corners still count.
    pair = Box((3 * piece.width_mm + piece.narrow_mm) / 2, piece.length_mm)
    if pair.width > usable:
        return [single] * piece.count
    return [pair] * (piece.count // 2) + [single] * (piece.count % 2)

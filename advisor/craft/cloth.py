"""How much of a cloth to buy for its pieces: a layout that exists, never less than it takes.

Pieces are rectangles, tapered panels or bias rectangles with the grain along the cloth. A piece
is turned a quarter only if it allows any grain; tapered panels lie head to tail only on a cloth
without one-way nap; a matched piece begins only where the repeat does. The cloth is open, or
folded along its length: then pieces are cut two at a time, and an odd one on the fold. Several
ways are tried and the shortest layout counts (`laying`, `strip`), so a real lay may be a little
shorter. Length and shrinkage `derived`; rounding up as shops sell `common-practice`.
"""

from __future__ import annotations

from collections.abc import Sequence
from typing import Final

from msgspec import Struct
from msgspec.structs import replace

from advisor.craft import checks, laying, slanted
from advisor.craft.allowance import strip_length, strip_square
from advisor.craft.strip import Box, Packing, pack

SOURCES: Final[tuple[str, ...]] = ("derived", "estimate", "common-practice", "memory")

METRIC_STEP_MM: Final = 100.0
US_STEP_MM: Final = 36 * 25.4 / 8
#: A length so little over a step is that step: nobody cuts a fiftieth of a mm.
SAME_MM: Final = 0.02


class CutPiece(Struct, frozen=True):
    """A piece to cut, in mm: width across the grain, length along it, how many.

    `narrow_mm` is the width of the narrow end of a tapered panel; `any_grain` lets it turn a
    quarter; `matched` lets it begin only where the repeat does; `bias` lays its length at 45°;
    `joined` lets a bias piece be put together, with `seam_mm` at each edge that is joined; `leans`
    holds one on the bias to one side (see `strip.Box`).
    """

    width_mm: float
    length_mm: float
    count: int = 1
    any_grain: bool = False
    narrow_mm: float | None = None
    matched: bool = False
    bias: bool = False
    joined: bool = False
    seam_mm: float = 0.0
    leans: int = 0

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

    @property
    def across_mm(self) -> float:
        """What it reaches across the cloth, the better way where it may turn."""
        if self.bias:
            return laying.bias_span(self.width_mm, self.length_mm)
        return min(self.width_mm, self.length_mm) if self.turns else self.width_mm

    @property
    def is_strips(self) -> bool:
        """Whether it may be cut as bias strips of its width, which are joined."""
        narrow = min(self.width_mm, self.length_mm)
        return self.bias and self.joined and narrow <= laying.STRIP_WIDE

    def reaches(self, usable: float) -> float:
        """What it reaches at least across so much cloth, joined if it may be."""
        if not self.joined:
            return self.across_mm
        narrow = min(self.width_mm, self.length_mm)
        if self.is_strips or laying.in_parts(self.width_mm, self.length_mm, self.seam_mm, usable):
            return 0.0
        return laying.bias_span(narrow, 2 * self.seam_mm)

    @property
    def turns(self) -> bool:
        """Whether it may lie a quarter round: any grain will do, and no pattern has to meet."""
        return self.any_grain and not self.matched


class BoughtCloth(Struct, frozen=True):
    """A cloth as bought: width in mm, nap, repeat in mm, selvage each side, shrinkage shares.

    `ends_mm` is what squaring its two ends takes, once.
    """

    width_mm: float
    one_way: bool = False
    repeat_mm: float = 0.0
    selvage_mm: float = 0.0
    shrinks_long: float = 0.0
    shrinks_wide: float = 0.0
    ends_mm: float = 0.0

    def __post_init__(self) -> None:
        checks.above("cloth width", self.width_mm)
        checks.at_least("repeat", self.repeat_mm, 0)
        checks.at_least("ends", self.ends_mm, 0)
        checks.share("shrinkage along", self.shrinks_long)
        checks.share("shrinkage across", self.shrinks_wide)
        if 2 * checks.at_least("selvage", self.selvage_mm, 0) >= self.width_mm:
            raise ValueError(f"selvages of {self.selvage_mm:g} leave nothing of the cloth")

    @property
    def usable_mm(self) -> float:
        """Width to cut from, once pre-shrunk and without selvages."""
        return (self.width_mm - 2 * self.selvage_mm) * (1 - self.shrinks_wide)

    @property
    def step_mm(self) -> float:
        """The repeat once the cloth has shrunk."""
        return self.repeat_mm * (1 - self.shrinks_long)


class Laid(Struct, frozen=True):
    """Pieces laid on one stretch of a cloth, open or folded along its length.

    `boxes` are those of each kind of piece, which is counted among all pieces; `begins_mm` is
    where the stretch begins along the cloth.
    """

    packing: Packing
    boxes: tuple[tuple[int, tuple[Box, ...]], ...]
    begins_mm: float = 0.0
    folded: bool = False

    @property
    def ends_mm(self) -> float:
        """Where the stretch ends along the cloth."""
        return self.begins_mm + self.packing.length


class Estimate(Struct, frozen=True):
    """Cloth to buy in mm, an estimate: packed, with ends and shrinkage, never below least.

    `packed_mm` is the layout alone; `least_mm` the length no layout can beat; `used` the
    share of the packed cloth that ends in the pieces; `laid` the layout, stretch by stretch.
    """

    length_mm: float
    buy_metric_mm: float
    buy_us_mm: float
    packed_mm: float
    least_mm: float
    used: float
    kind: str = "estimate"
    sources: tuple[str, ...] = SOURCES
    laid: tuple[Laid, ...] = ()


def round_up_to_shop(length_mm: float, step_mm: float = METRIC_STEP_MM) -> float:
    """A length in mm rounded up to what shops sell: 0.1 m unless told, or 1/8 yd."""
    step = checks.above("selling step", step_mm)
    whole = max(0.0, checks.at_least("length", length_mm, 0) - SAME_MM)
    return max(1, checks.up(whole / step)) * step if length_mm > 0 else 0.0


def estimate(pieces: Sequence[CutPiece], cloth: BoughtCloth, *, folded: bool = False) -> Estimate:
    """The cloth to buy for some pieces, laid open or folded along its length.

    Raises:
        TooWideError: a piece reaches further than the usable width; on a fold, two at a time.
        ValueError: there are no pieces.
    """
    if not pieces:
        raise ValueError("no pieces to lay out")
    for piece in pieces:
        refuse_too_wide(piece, cloth.usable_mm)
    laid = _folded(pieces, cloth) if folded else (_opened(list(enumerate(pieces)), cloth),)
    packed = laid[-1].ends_mm
    length = (packed + cloth.ends_mm) / (1 - cloth.shrinks_long)
    area = sum(piece.area_mm2 * piece.count for piece in pieces)
    return Estimate(
        length_mm=length,
        buy_metric_mm=round_up_to_shop(length),
        buy_us_mm=round_up_to_shop(length, US_STEP_MM),
        packed_mm=packed,
        least_mm=least(pieces, cloth),
        used=min(1.0, area / (packed * cloth.usable_mm)),
        laid=laid,
    )


def refuse_too_wide(piece: CutPiece, usable: float) -> None:
    """Raise TooWideError for a piece that reaches further than so many mm."""
    across = piece.reaches(usable)
    if across > usable * (1 + 1e-9):
        raise checks.TooWideError(across, usable, piece.bias)


def least(pieces: Sequence[CutPiece], cloth: BoughtCloth) -> float:
    """The length in mm that no layout can beat: the longest piece, or the area over the width."""
    area = sum(piece.area_mm2 * piece.count for piece in pieces)
    longest = max(_shortest_reach(piece, cloth) for piece in pieces)
    return max(longest, area / cloth.usable_mm)


def _shortest_reach(piece: CutPiece, cloth: BoughtCloth) -> float:
    if piece.bias:
        return piece.reaches(cloth.usable_mm)
    return min(piece.width_mm, piece.length_mm) if piece.turns else piece.length_mm


_Ways = list[list[Box]]
_Numbered = list[tuple[int, CutPiece]]


def _opened(pieces: _Numbered, cloth: BoughtCloth, begins: float = 0.0) -> Laid:
    across = cloth.usable_mm
    laid = _best([(i, _ways(piece, cloth, across)) for i, piece in pieces], across)
    return replace(laid, begins_mm=begins)


def _best(kinds: list[tuple[int, _Ways]], across: float) -> Laid:
    """Try the ways of one kind of piece after another, and keep what is shorter."""
    chosen = [0] * len(kinds)

    def packed() -> Packing:
        boxes = [box for (_, kind), way in zip(kinds, chosen, strict=True) for box in kind[way]]
        lay = slanted.pack if any(box.slanted for box in boxes) else pack
        return lay(boxes, across)

    best = packed()
    for place, (_, ways) in enumerate(kinds):
        for way in range(1, len(ways)):
            before, chosen[place] = chosen[place], way
            found = packed()
            if found.length < best.length:
                best = found
            else:
                chosen[place] = before
    taken = zip(kinds, chosen, strict=True)
    return Laid(best, tuple((number, tuple(ways[way])) for (number, ways), way in taken))


def _ways(piece: CutPiece, cloth: BoughtCloth, across: float) -> _Ways:
    """Every reading of a kind of piece as boxes that fit a strip so wide."""
    wide, long, count = piece.width_mm, piece.length_mm, piece.count
    if piece.is_strips:
        strip = max(wide, long) * count, min(wide, long)
        side = min(strip_square(*strip), across - SAME_MM)
        strips = [Box(side, strip_length(*strip, side))]
        return [strips, _on_the_bias(piece, across)] if piece.across_mm <= across else [strips]
    if piece.bias:
        return [_on_the_bias(piece, across)]
    step = cloth.step_mm if piece.matched else 0.0
    ways = [[Box(wide, long, turns=piece.turns, step=step)] * count]
    if piece.narrow_mm is not None and not cloth.one_way:
        rows = laying.tapered(wide, piece.narrow_mm, long, count, across)
        pairs = laying.tapered(wide, piece.narrow_mm, long, 2, across) * (count // 2)
        ways.append([replace(box, step=step) for box in rows])
        ways.append([replace(box, step=step) for box in pairs] + ways[0][: count % 2])
    return ways


def _on_the_bias(piece: CutPiece, across: float) -> list[Box]:
    """Pieces on the bias, a pair of them left and right: one leans to each side, or it twists."""
    boxes = [Box(piece.width_mm, piece.length_mm, slanted=True)]
    if piece.joined:
        parts = laying.in_parts(piece.width_mm, piece.length_mm, piece.seam_mm, across)
        boxes = parts or boxes
    sides = [*(1, -1) * (piece.count // 2), *[piece.leans] * (piece.count % 2)]
    return [replace(box, leans=side) if box.slanted else box for side in sides for box in boxes]


def _folded(pieces: Sequence[CutPiece], cloth: BoughtCloth) -> tuple[Laid, ...]:
    """The shorter of two folded lays: odd pieces on the fold, or after it on the open cloth."""
    half = cloth.usable_mm / 2
    for piece in pieces:
        if piece.count > 1:
            refuse_too_wide(piece, half)
    pairs = [(i, replace(p, count=p.count // 2)) for i, p in enumerate(pieces) if p.count > 1]
    odd = [(i, replace(p, count=1)) for i, p in enumerate(pieces) if p.count % 2]
    lying = [(i, _ways(piece, cloth, half)) for i, piece in pairs]
    doubled = [replace(_best(lying, half), folded=True)] if lying else []
    begins = doubled[0].ends_mm if doubled else 0.0
    found = [*doubled, *([_opened(odd, cloth, begins)] if odd else [])]
    if odd and not any(piece.bias for _, piece in odd):
        lying += [(i, [_on_fold(piece, cloth)]) for i, piece in odd]
        folded = replace(_best(lying, half), folded=True)
        if folded.ends_mm < found[-1].ends_mm:
            return (folded,)
    return tuple(found)


def _on_fold(piece: CutPiece, cloth: BoughtCloth) -> list[Box]:
    """Half of an odd piece, which is taken as symmetric, with its middle on the fold."""
    step = cloth.step_mm if piece.matched else 0.0
    return [Box(piece.width_mm / 2, piece.length_mm, step=step, at_edge=True)]

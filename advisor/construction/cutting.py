"""From a piece as the project says it to what is cut: panels, tucks, rings, tiers.

Sizes by `craft.fullness`; they are those of cloth that has shrunk already. A length has an
allowance at both ends, or a hem below where one is said; a net is left raw below. A ring is drawn
with an allowance inside its seam line, a hem outside, and an allowance at each end for its joins.
"""

from __future__ import annotations

import math
from collections.abc import Sequence
from typing import Final

from msgspec import Struct
from msgspec.structs import replace

from advisor.craft import cloth as lay
from advisor.craft import fullness as table
from advisor.craft.checks import TooWideError
from advisor.craft.laying import bias_span
from advisor.knowledge import nouns
from advisor.project.making import Flounce, Piece, Tucks
from advisor.project.placing import singular_words

BIAS: Final = math.sqrt(2)
HALF, QUARTER = 0.5, 0.25
STRIP_LONGER: Final = 6.0
"""A bias piece so many times longer than wide is a strip (common practice) ..."""
STRIP_WHOLE: Final = 600.0
"""... and is put together of shorter ones where it is longer than this, mm (estimate)."""


class Ring(Struct, frozen=True):
    """A ring of a flounce, mm: radii to cut and at the seam line, its hem and how full that is.

    The hem is that of all its rings once they are joined.
    """

    cut_inner: float
    seam_line: float
    cut_outer: float
    hem: float
    hem_fullness: float
    turn: float


class TuckMarks(Struct, frozen=True):
    """Where tucks are marked, mm: first fold from the cut edge, then fold to fold; their rows."""

    number: int
    depth: float
    first: float
    fold_to_fold: float
    spacing: float
    takes: float
    row: float


class Cut(Struct, frozen=True):
    """One kind of piece as it is cut, mm, and the finished edge that its fullness is drawn up to.

    For a ring, width and height are those of the rectangle that it is cut from; of `parts` such
    one piece is joined.
    """

    piece: Piece
    name: str
    number: int
    width: float
    height: float
    fullness: float = 1.0
    edge: float | None = None
    ring: Ring | None = None
    tucks: TuckMarks | None = None
    parts: int = 1

    @property
    def whole(self) -> float:
        """How long its parts are once they are joined, mm."""
        seams = 2 * self.piece.allowance
        return self.parts * (max(self.width, self.height) - seams) + seams


def cuts_of(piece: Piece, usable: float, *, raw: bool = False) -> tuple[Cut, ...]:
    """What is cut for a piece from a cloth so wide (mm); tiers come out one by one.

    A `raw` cloth, such as net, has no hem below where none is said. What may be joined is cut in
    equal parts, of which none is longer than the cloth is wide.

    Raises:
        TooWideError: a panel is wider than the cloth.
    """
    whole = _whole(piece, usable, raw=raw)
    return tuple(_in_parts(cut, usable) for cut in whole)


def _in_parts(cut: Cut, usable: float) -> Cut:
    """A straight piece in the parts that it is joined of, with an allowance at each join."""
    piece = cut.piece
    long, seams = max(cut.width, cut.height), 2 * piece.allowance
    shaped = piece.narrow is not None or cut.tucks or cut.ring
    if not piece.joined or piece.grain == "bias" or shaped or not seams < usable < long:
        return cut
    parts = math.ceil((long - seams) / (usable - seams) - 1e-9)
    each = (long - seams) / parts + seams
    wide, high = (each, cut.height) if cut.width == long else (cut.width, each)
    return replace(cut, number=cut.number * parts, parts=parts, width=wide, height=high)


def _whole(piece: Piece, usable: float, *, raw: bool) -> tuple[Cut, ...]:
    """The same before what may be joined is cut in parts."""
    if piece.flounce is not None:
        return (_rings(piece, piece.flounce, raw),)
    if piece.tiers is not None:
        return _tiers(piece, usable, raw)
    if _folds_upright(piece):
        return _upright(piece, usable, raw=raw)
    wide, high, number = piece.width, piece.height, piece.number or 1
    edge = None
    if not piece.cut:
        high = _cut_height(piece, raw)
        if piece.fullness > 1:
            edge = piece.width
            room = _room(piece, high, usable)
            said = None if piece.joined else piece.number
            row = table.panels(edge, piece.fullness, room, piece.allowance, said)
            wide, number = row.panel_width, row.number
        else:
            wide += 2 * piece.allowance
    marks = None if piece.tucks is None else _marks(piece, piece.tucks, high)
    if marks is not None:
        wide += marks.takes
    return (Cut(piece, piece.name, number, wide, high, piece.fullness, edge, tucks=marks),)


def _folds_upright(piece: Piece) -> bool:
    """Whether a doubled strip stands on its end: a sash or a band folds along its length."""
    return piece.doubled and piece.fullness <= 1 and not piece.cut and piece.height > piece.width


def _upright(piece: Piece, usable: float, *, raw: bool) -> tuple[Cut, ...]:
    """The cut of such a strip: twice as wide, and as long as it is said."""
    lying = replace(piece, width=piece.height, height=piece.width)
    (cut,) = _whole(lying, usable, raw=raw)
    return (replace(cut, piece=piece, width=cut.height, height=cut.width),)


def _room(piece: Piece, high: float, usable: float) -> float:
    """How wide a panel may be; one on the bias must leave room for what its length reaches."""
    if piece.grain != "bias":
        return usable
    room = usable * BIAS - high
    if room <= 2 * piece.allowance:
        raise TooWideError(bias_span(2 * piece.allowance, high), usable, bias=True)
    return room


def _below(piece: Piece, raw: bool) -> float:
    """What is cut below the finished length: the hem that is said, else an allowance."""
    if piece.hem is not None:
        return piece.hem
    return 0.0 if raw else piece.allowance


def _cut_height(piece: Piece, raw: bool) -> float:
    if piece.doubled:
        return table.ruffle_depth(piece.height, 0.0, piece.allowance, doubled=True)
    return table.cut_length(piece.height, _below(piece, raw), piece.allowance)


def _marks(piece: Piece, said: Tucks, row: float) -> TuckMarks:
    """The tucks centred on their piece: from the first stitching to the last fold."""
    takes = table.tucks(said.depth, said.number, said.spacing)
    span = (said.number - 1) * said.spacing + said.depth
    side = (piece.width - span) / 2 + (0.0 if piece.cut else piece.allowance)
    return TuckMarks(
        said.number,
        said.depth,
        side + said.depth,
        said.spacing + 2 * said.depth,
        said.spacing,
        takes,
        row,
    )


def _rings(piece: Piece, said: Flounce, raw: bool) -> Cut:
    whole = said.seam + 2 * piece.allowance * said.pieces
    ring = table.flounce(whole, said.depth, pieces=said.pieces, turn=said.turn)
    inner, outer = ring.inner_radius - piece.allowance, ring.outer_radius + _below(piece, raw)
    wide = outer if said.turn <= QUARTER else 2 * outer
    high = outer if said.turn <= HALF else 2 * outer
    number = said.pieces * (piece.number or 1)
    hem = ring.hem_length - 2 * piece.allowance * said.pieces
    found = Ring(inner, ring.inner_radius, outer, hem, hem / said.seam, said.turn)
    return Cut(piece, piece.name, number, wide, high, edge=said.seam, ring=found)


def _tiers(piece: Piece, usable: float, raw: bool) -> tuple[Cut, ...]:
    said = piece.tiers
    assert said is not None
    widths = table.tiers(piece.width, [said.fullness] * len(said.heights))
    edges = (piece.width, *widths)
    found = []
    for i, height in enumerate(said.heights):
        below = _below(piece, raw) if i == len(said.heights) - 1 else piece.allowance
        row = table.panels(edges[i], said.fullness, usable, piece.allowance)
        high = table.cut_length(height, below, piece.allowance)
        found.append(
            Cut(
                piece,
                f"{piece.name}, tier {i + 1}",
                row.number * (piece.number or 1),
                row.panel_width,
                high,
                said.fullness,
                edges[i],
            )
        )
    return tuple(found)


def _is_strip(wide: float, high: float) -> bool:
    short, long = sorted((wide, high))
    return long >= STRIP_LONGER * short


def is_joined(piece: Piece, wide: float, high: float) -> bool:
    """Whether a bias piece of this size is a strip that is put together of shorter ones."""
    strip = _is_strip(wide, high) and max(wide, high) > STRIP_WHOLE
    return piece.grain == "bias" and (piece.joined or strip)


def all_on_cloth(cuts: Sequence[Cut]) -> list[lay.CutPiece]:
    """All pieces as they lie on their cloth; front and back on the bias lean to opposite sides.

    As a pair does: else all yarns run round the body one way, and it twists (common practice).
    """
    found, leans = [], dict[tuple[str, ...], int]()
    for cut in cuts:
        piece = on_cloth(cut)
        halves = nouns.QUARTERS & {*(words := singular_words(cut.name))}
        if halves and piece.bias and not _is_strip(piece.width_mm, piece.length_mm):
            of = tuple(word for word in words if word not in halves)
            piece = replace(piece, leans=leans.get(of, 1))
            leans[of] = -piece.leans if piece.count % 2 else piece.leans
        found.append(piece)
    return found


def on_cloth(cut: Cut) -> lay.CutPiece:
    """A piece as it lies on its cloth, for packing."""
    piece, wide, high = cut.piece, cut.width, cut.height
    if piece.grain == "crosswise":
        wide, high = high, wide
    return lay.CutPiece(
        wide,
        high,
        cut.number,
        any_grain=piece.grain == "any",
        narrow_mm=None if piece.grain == "crosswise" else _narrow(cut),
        matched=piece.matched,
        bias=piece.grain == "bias",
        joined=is_joined(piece, wide, high),
        seam_mm=piece.allowance,
    )


def _narrow(cut: Cut) -> float | None:
    """The narrow end as cut: with the seams, fullness and tucks that the wide end has."""
    piece = cut.piece
    if piece.narrow is None:
        return None
    tucked = cut.tucks.takes if cut.tucks is not None else 0.0
    if piece.cut:
        return piece.narrow + tucked
    seams = 2 * piece.allowance
    return piece.narrow * (cut.width - tucked - seams) / piece.width + seams + tucked

"""Where each piece lies on its cloth: a layout read back from the boxes of its packing.

A packing tells where boxes lie and not whose they are. Boxes of one size are interchangeable but
for what holds them: some may begin only at a repeat, some lie only at the fold, some may turn.
Those that are held more take their places first; whoever is held less fits wherever they fit, so
that nobody is left without a place (`derived`).
"""

from __future__ import annotations

from collections.abc import Sequence

from msgspec import Struct

from advisor.craft.cloth import CutPiece, Laid
from advisor.craft.strip import FINE, Box, PlacedBox

Outline = tuple[tuple[float, float], ...]
"""The corners of a piece, mm: from the edge of the usable cloth or from the fold, and along it."""
SAME_MM = 0.001
UPRIGHT, TURNED, ROW, FOLD = "upright", "turned", "head to tail", "on the fold"
BIAS, STRIPS = "bias", "strips"
PART, CORNER = "part on the bias", "corner"


class Lies(Struct, frozen=True):
    """Some pieces of one kind that lie together, in mm.

    Attributes:
        piece: which kind, counted among all pieces.
        number: how many pieces are cut there; on a folded cloth two from each outline.
        x: from the edge of the usable cloth, or from the fold.
        y: from the beginning of the cloth.
        across: how far they reach across the cloth.
        along: how far they reach along it.
        way: upright, turned a quarter, in a row head to tail, half of one on the fold, on the
            bias, a square from which bias strips are cut, or of a joined piece a part on the bias
            or a corner, each of which counts.
        folded: whether the cloth is folded there.
        outlines: the corners of each.
    """

    piece: int
    number: int
    x: float
    y: float
    across: float
    along: float
    way: str
    folded: bool
    outlines: tuple[Outline, ...]


def lying(laid: Sequence[Laid], pieces: Sequence[CutPiece]) -> tuple[Lies, ...]:
    """Where all pieces lie, from the beginning of the cloth on."""
    found = [
        _lies(number, pieces[number], box, place, part)
        for part in laid
        for number, box, place in _assigned(part)
    ]
    return tuple(sorted(found, key=lambda one: (one.y, one.x)))


def _assigned(laid: Laid) -> list[tuple[int, Box, PlacedBox]]:
    """Every box with its kind of piece and its place; those that are held most come first."""
    boxes = [(number, box) for number, kind in laid.boxes for box in kind]
    boxes.sort(key=lambda one: (not one[1].step, not one[1].at_edge, one[1].turns))
    free = list(laid.packing.places)
    found = []
    for number, box in boxes:
        place = next(place for place in free if _fits(box, place))
        free.remove(place)
        found.append((number, box, place))
    return found


def _fits(box: Box, place: PlacedBox) -> bool:
    if box.slanted:
        reach = min(box.within, (box.width + box.length) / 2**0.5)
        span = place.down > 0 and _near(place.width, reach)
        ends = {box.width / 2**0.5, box.length / 2**0.5}
        return span and any(_near(place.down, end) for end in ends)
    if place.down or (box.at_edge and place.x > SAME_MM):
        return False
    step = round(box.step * FINE) / FINE  # as it was packed: a hair each would add up
    if step and not _near(place.y, round(place.y / step) * step):
        return False
    size = (place.width, place.length)
    ways = [(box.width, box.length), *([(box.length, box.width)] if box.turns else [])]
    return any(_near(size[0], wide) and _near(size[1], long) for wide, long in ways)


def _near(one: float, other: float) -> bool:
    return abs(one - other) <= SAME_MM


def _lies(number: int, piece: CutPiece, box: Box, place: PlacedBox, laid: Laid) -> Lies:
    way = _way(piece, box, place)
    row = _in_row(piece, box) if way == ROW else 1
    double = 2 if laid.folded and way != FOLD else 1
    y = laid.begins_mm + place.y
    return Lies(
        number,
        piece.count if way == STRIPS else row * double,
        place.x,
        y,
        place.width,
        place.length,
        way,
        laid.folded,
        _outlines(piece, place, y, row, way),
    )


def _way(piece: CutPiece, box: Box, place: PlacedBox) -> str:
    if piece.bias:
        whole = (box.width, box.length) == (piece.width_mm, piece.length_mm)
        if not box.slanted:
            return STRIPS if piece.is_strips else CORNER
        return BIAS if whole else PART
    if box.at_edge:
        return FOLD
    if piece.narrow_mm is not None and box.width > piece.width_mm + SAME_MM:
        return ROW
    turned = box.turns and not _near(place.width, piece.width_mm)
    return TURNED if turned else UPRIGHT


def _in_row(piece: CutPiece, box: Box) -> int:
    """How many tapered panels a row of this width holds (`laying.tapered` backwards)."""
    narrow = piece.width_mm if piece.narrow_mm is None else piece.narrow_mm
    return 1 + round((box.width - piece.width_mm) / ((piece.width_mm + narrow) / 2))


def _outlines(
    piece: CutPiece, place: PlacedBox, y: float, row: int, way: str
) -> tuple[Outline, ...]:
    left, right, top, low = place.x, place.x + place.width, y, y + place.length
    if place.down and place.length > place.width + SAME_MM:
        return (_cut_off(place, y),)
    if way == CORNER:
        return (((left, top), (right, (top + low) / 2), (left, low)),)
    if place.down:
        over = place.width - place.down
        corners = (left + over, top), (right, top + place.down), (left + place.down, low)
        return ((*corners, (left, top + over)),)
    narrow = piece.narrow_mm
    if narrow is None or way in (TURNED, STRIPS):
        return (((left, top), (right, top), (right, low), (left, low)),)
    if way == FOLD:
        return (((left, top), (left + narrow / 2, top), (right, low), (left, low)),)
    slope, found = (piece.width_mm - narrow) / 2, []
    for i in range(row):
        at = left + i * (piece.width_mm + narrow) / 2
        ends = (at, at + piece.width_mm), (at + slope, at + slope + narrow)
        (a, b), (c, d) = ends if i % 2 else ends[::-1]
        found.append(((a, top), (b, top), (d, low), (c, low)))
    return tuple(found)


def _cut_off(place: PlacedBox, y: float) -> Outline:
    """The corners of a piece on the bias that is cut off at both edges of what it may reach."""
    left, right, low, down = place.x, place.x + place.width, y + place.length, place.down
    off = (place.length - place.width) / 2
    first, last = right - (down - off), left + (down - off)
    return (
        (first, y),
        (right, y + down - off),
        (right, y + down + off),
        (last, low),
        (left, low - down + off),
        (left, low - down - off),
    )

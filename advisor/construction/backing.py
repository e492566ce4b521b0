"""The pieces of an interfacing of which none is said, by the pieces of cloth that it backs.

A place that holds the interfacing is named after the piece that is backed there: the facing, the
collar, the waistband. Of a piece that makes both layers of a place, as upper and under collar, one
in two is backed; of a facing, and of a band that is folded, each is. A canvas lies on the front and
not on its facing; what is quilted is backed all over, once between its layers, and as roomy as they
are cut (`roomy`). Shape and size are the piece's own, so the
lay is a little too long rather than too short; but a canvas is as long as its place says, where
that is a backing of its own and shorter than the piece (`common-practice`).
"""

from __future__ import annotations

import math
from typing import Final

from msgspec import Struct
from msgspec.structs import replace

from advisor.construction.belonging import half_of
from advisor.construction.notionlist import QUILTING
from advisor.construction.roomy import roomy
from advisor.knowledge import nouns
from advisor.knowledge.model import Knowledge
from advisor.project.bindings import strip_of
from advisor.project.garment import Garment, Seam
from advisor.project.making import Piece
from advisor.project.placing import singular_words

FACING: Final = "facing"
CANVAS: Final = "canvas"
INTERFACING: Final = "interfacing.kind"
BACKED: Final = "backing"
"""The family of places whose length is that of what is laid there, and no edge's."""
PLACKET: Final = "placket"
BOUND: Final = "bound-edge"
STRIP: Final = 80.0
"""How wide what backs a vent or a slit is cut, mm (`estimate`)."""
HALF: Final = "half"
TRIMMED: Final = 30.0
"""What a canvas is cut longer than it lies, to be trimmed once it is padded, mm (`estimate`)."""


class Backing(Struct, frozen=True):
    """The pieces of an interfacing, and the places of which no piece is told by its name."""

    pieces: tuple[Piece, ...]
    without: tuple[str, ...]


def backing_of(name: str, garment: Garment, knowledge: Knowledge) -> Backing:
    """The pieces of an interfacing, each as often as the pieces that it backs ask for."""
    found: dict[str, Piece] = {}
    without = []
    for seam in garment.seams:
        kind = knowledge.places.kinds.get(seam.place)
        if name not in seam.cloths() or (kind is not None and kind.family == "fastening"):
            continue
        backed = _backed(seam, name, garment, knowledge)
        if not backed:
            without.append(seam.name)
        for whole in backed:
            number, high = (
                _number(whole, seam, name),
                _height(whole, seam, name, garment, knowledge),
            )
            piece = whole
            if kind is not None and kind.id == PLACKET:
                piece, number, high = _strip(whole, seam, name)
            if (before := found.get(piece.name)) is not None:
                number, high = max(number, before.number or 1), max(high, before.height)
            found[piece.name] = replace(
                piece, cloth=name, number=number, height=high, matched=False
            )
    return Backing(tuple(found.values()), tuple(without))


def _backed(seam: Seam, name: str, garment: Garment, knowledge: Knowledge) -> list[Piece]:
    """The pieces of the cloths of a place that it is named after, by the most words in common."""
    where = set(singular_words(seam.name)) - set(singular_words(name))
    cloths = set(seam.cloths()) - {name}
    cloths -= {strip_of(seam, garment)} if seam.place == BOUND and len(cloths) > 1 else set()
    cloths = {c for c in cloths if not _ruled_out(name, c, garment, knowledge)} or cloths
    if seam.place == QUILTING:
        return _between(seam, cloths, garment)
    fronts = knowledge.entries[garment.cloths[name].entry].kind == CANVAS
    where -= {FACING} if fronts else set()
    pieces = garment.plan.pieces
    told = any(_alike(p, where, cloths, nouns.SHARES, fronts=fronts) is not None for p in pieces)
    unsaid = nouns.SHARES if told else nouns.SHARES | nouns.SIDES
    alike: dict[tuple[int, int], list[Piece]] = {}
    for piece in pieces:
        if (rank := _alike(piece, where, cloths, unsaid, fronts=fronts)) is not None:
            alike.setdefault(rank, []).append(piece)
    best = alike[max(alike)] if alike else []
    faced = [piece for piece in best if FACING in singular_words(piece.name)]
    once = sum(use.cloth == name for use in seam.uses) == 1
    return faced if faced and once else best  # a layer that is there once backs one side of an edge


def _between(seam: Seam, cloths: set[str], garment: Garment) -> list[Piece]:
    """The pieces of the first cloth of a quilting that has any; those behind are as large."""
    for cloth in (one for one in seam.cloths() if one in cloths):
        ours = half_of(seam, [piece for piece in garment.plan.pieces if piece.cloth == cloth])
        if ours:
            return [roomy(piece, garment) for piece in ours]
    return []


def _alike(
    piece: Piece, where: set[str], cloths: set[str], unsaid: frozenset[str], *, fronts: bool
) -> tuple[int, int] | None:
    """How well a piece is called after a place; None where it is not, or is of another cloth."""
    words = set(singular_words(piece.name))
    if piece.cloth not in cloths or not where or (fronts and FACING in words):
        return None
    words = words - unsaid or words
    return (len(words & where), -len(words - where)) if words <= where or where <= words else None


def _ruled_out(name: str, cloth: str, garment: Garment, knowledge: Knowledge) -> bool:
    """Whether a cloth bears no interfacing of that kind, so that another layer takes it."""
    about, aspect = knowledge.entries[garment.cloths[cloth].entry], knowledge.aspects[INTERFACING]
    kind = knowledge.entries[garment.cloths[name].entry].kind
    if kind not in aspect.words:
        return False
    guards = (c for c in about.claims if c.aspect == INTERFACING and c.strength == "must")
    return any(not c.mask >> aspect.words.index(kind) & 1 for c in guards)


def _number(piece: Piece, seam: Seam, name: str) -> int:
    """How many of a piece are backed: each, or one in two where it makes both layers."""
    cut = piece.number or 1
    plies = sum(use.cloth == piece.cloth for use in seam.uses)
    rows = sum(use.cloth == name for use in seam.uses)
    if seam.place == QUILTING:
        return cut * rows
    each = seam.facts.get("edge") == "folded"
    each = each or bool({FACING, HALF} & set(singular_words(piece.name)))
    if each or plies < 2 or cut < 2 * seam.making.times:
        return cut
    return min(cut, math.ceil(cut / 2) * rows)


def _strip(piece: Piece, seam: Seam, name: str) -> tuple[Piece, int, float]:
    """What backs a vent or a slit: a strip of the piece beside it, as long as that is."""
    rows = sum(use.cloth == name for use in seam.uses)
    high = min(piece.height, seam.long_mm + TRIMMED)
    strip = replace(piece, name=seam.name, width=min(piece.width, STRIP))
    return strip, rows * seam.making.times, high


def _height(piece: Piece, seam: Seam, name: str, garment: Garment, knowledge: Knowledge) -> float:
    """How long it is cut, mm: as the piece, or as the place says of a canvas that ends before."""
    kind, long = knowledge.places.kinds.get(seam.place), seam.facts.get("length")
    own = kind is not None and kind.family == BACKED
    if not (own and long) or knowledge.entries[garment.cloths[name].entry].kind != CANVAS:
        return piece.height
    return min(piece.height, float(long) + TRIMMED)

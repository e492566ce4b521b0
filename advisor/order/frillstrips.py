"""A frill that is cut in strips: they are one length, hemmed along an edge, before it is drawn up.

The piece says so itself, by the cloth that its fullness takes and by the hem that is turned up on
it; where a place of its own joins or hems it, that place is the step.
"""

from __future__ import annotations

from typing import TYPE_CHECKING, Final

from advisor.knowledge import nouns
from advisor.order.kinds import SeamPlace
from advisor.project.placing import singular_words
from advisor.units import show

if TYPE_CHECKING:
    from collections.abc import Sequence

    from advisor.project.garment import Garment
    from advisor.project.making import Piece

DRAWN: Final = frozenset({"gather", "lay-pleats"})
"""The work by which the strip is made shorter."""
JOINED: Final = "its strips joined into one length"
HEMMED: Final = "one long edge hemmed by {depth}"


def frill_pieces(place: SeamPlace, garment: Garment) -> list[Piece]:
    """The pieces that are drawn up there: of its full cloth, and called a frill as it is."""
    words = nouns.FRILLED & set(singular_words(place.name))
    cloths = set(place.full)
    return [
        piece
        for piece in garment.plan.pieces
        if piece.cloth in cloths and words & set(singular_words(piece.name))
    ]


def made_before(place: SeamPlace, places: Sequence[SeamPlace], garment: Garment) -> str:
    """What is done to the strips of a frill before it is drawn up; "" where nothing is."""
    pieces = frill_pieces(place, garment)
    if not pieces:
        return ""
    words = nouns.FRILLED & set(singular_words(place.name))
    own = [p for p in places if p is not place and words & set(singular_words(p.name))]
    bolts = garment.plan.bolts
    widths = {p.cloth: bolts[p.cloth].width for p in pieces if p.cloth in bolts}
    long = [(p, p.width * p.fullness / (p.number or 1)) for p in pieces]
    wide = any(takes > (widths.get(p.cloth) or takes) for p, takes in long)
    seamed = any(p.kind.family == "seam" for p in own)
    depth = next((p.hem for p in pieces if p.hem and not p.doubled), None)
    ended = any(p.kind.family in ("edge", "laid on") for p in own)
    done = [JOINED] if wide and not seamed else []
    if depth is not None and not ended:
        done.append(HEMMED.format(depth=show("length", depth, garment.units)))
    return f", {' and '.join(done)} before" if done else ""

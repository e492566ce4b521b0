"""Cuffs, bands and collars: whether one is a ring, what it is faced with, where it is made up."""

from __future__ import annotations

from collections.abc import Sequence
from itertools import pairwise

from advisor.knowledge import nouns
from advisor.order.hosts import edged_apart
from advisor.order.kinds import SeamPlace, crosses
from advisor.project.garment import Garment
from advisor.project.headwords import speaks_of
from advisor.project.placing import singular_words

UP = ("up", "ups")
"""Words after `turn` of a hem that is folded out on the face."""
SLEEVE_SEAMS = frozenset({"underarm", "side-and-sleeve"})
LEG_SEAMS = frozenset({"inseam", "side"})
"""Roles of the seams that make a sleeve, or a leg, a tube."""
OVER_THE_HAND = 220.0
"""From this length on a closed ring goes over a hand, mm: estimate."""
FACED = frozenset({"cuff", "waistband"})
"""Kinds of band whose inside may be cut of another cloth."""
MADE_UP, PLIES = frozenset({"collar", "hood", "hood-edge"}), 2
"""Roles of what makes a collar or a hood up; plies of a seam that sets one."""
SEWN_TO = 3
"""Layers from which on the last is the inside of a band."""


BOTH_FACES = 2
"""Layers of a band that faces itself; one more is the edge that it is sewn to."""
HALF = 0.75
"""Of its edge: what is cut shorter than that is joined to another piece (estimate)."""
STIFFENER = "belt-stiffener"


def is_ring(place: SeamPlace, places: Sequence[SeamPlace]) -> bool:
    """Whether a cuff is a ring, for no opening is named.

    A gathered one is where it lets the hand in and the sleeve is closed along its whole length.
    """
    wide = place.seam.long_mm >= OVER_THE_HAND
    tube = wide and any(p.role.id in _limb(place) for p in places)
    if place.kind.id != "cuff" or (place.full and not tube):
        return False
    words = nouns.ON_LEG if _on_leg(place) else nouns.ON_SLEEVE
    fastened = any(
        p.kind.family == "fastening" and words & {*singular_words(p.name)} for p in places
    )
    slits = (p for p in places if p.kind.id == "placket")
    return not fastened and not any(_on_leg(p) == _on_leg(place) for p in slits)


def _on_leg(place: SeamPlace) -> bool:
    return speaks_of(place.name, nouns.ON_LEG)


def _limb(band: SeamPlace) -> frozenset[str]:
    """The roles of the seams that end at a cuff."""
    return LEG_SEAMS if _on_leg(band) else SLEEVE_SEAMS


def faced_with(place: SeamPlace, places: Sequence[SeamPlace], garment: Garment) -> str:
    """The cloth that faces a band inside: a layer beyond edge and band, of no seam of a lining.

    A lining that has seams of its own hangs there, and the piece of the band itself is no facing.
    """
    layers = [use.cloth for use in place.seam.uses if use.cloth in place.cloths]
    last = layers[-1] if len(layers) >= SEWN_TO else ""
    if place.kind.id not in FACED or not last or last in place.full or last in layers[:-1]:
        return ""
    hung = any(
        p.unit == "lining" and p.kind.family == "seam" and _meets(p, place, last) for p in places
    )
    named = (
        set(singular_words(piece.name)) for piece in garment.plan.pieces if piece.cloth == last
    )
    own = any(place.kind.id in words and not nouns.FACED_WITH & words for words in named)
    hung = hung or edged_apart(place, places, faced=True) or _hangs_in(last, place, places)
    return "" if hung or own or _of_another_piece(place, last, garment) else last


def _hangs_in(cloth: str, band: SeamPlace, places: Sequence[SeamPlace]) -> bool:
    """Whether a cloth is a piece that hangs in the band: the band runs over its own seams."""
    own = (p for p in places if p.kind.family == "seam" and p.cloths == (cloth,))
    return any(crosses(band, p) for p in own)


def _of_another_piece(band: SeamPlace, last: str, garment: Garment) -> bool:
    """Whether a piece that is called the facing of the band is cut of another cloth than this."""
    named = [
        p.cloth
        for p in garment.plan.pieces
        if {band.kind.id, "facing"} <= set(singular_words(p.name))
    ]
    return bool(named) and last not in named


def hung_with(place: SeamPlace, places: Sequence[SeamPlace], garment: Garment) -> bool:
    """Whether its last layer hangs below it as a curtain: the band is faced with its own cloth."""
    inside = faced_with(place, places, garment)
    own = [
        use.cloth for use in place.seam.uses if use.cloth in place.cloths and use.cloth != inside
    ]
    return bool(inside) and len(set(own)) < len(own) and len(own) <= BOTH_FACES


def in_halves(band: SeamPlace, garment: Garment) -> bool:
    """Whether the pieces that are called after a band are each much shorter than its edge."""
    called = singular_words(band.name)
    own = [p for p in garment.plan.pieces if singular_words(p.name) == called]
    return any(p.number and p.number > 1 and p.width < HALF * band.seam.long_mm for p in own)


def turned_up_outside(place: SeamPlace, places: Sequence[SeamPlace]) -> bool:
    """Whether a hem is folded out on the face: by its name, or as the cuff of trousers."""
    words = singular_words(place.name)
    legs = place.role.id == "hem" and any(p.role.id == "inseam" for p in places)
    legs |= "trouser" in words
    named = any(first == "turn" and second in UP for first, second in pairwise(words))
    return named or "turnup" in words or (legs and "cuff" in words)


def is_made_up(collar: SeamPlace, places: Sequence[SeamPlace]) -> bool:
    """Whether another place makes what is set to a neck, or it is of one ply, with no edge."""
    others = (p for p in places if p.name != collar.name and p.unit != "lining")
    made = any(p.role.id in MADE_UP or "collar" in singular_words(p.name) for p in others)
    return made or len(collar.seam.uses) < PLIES or "hood" in singular_words(collar.name)


def _meets(seam: SeamPlace, band: SeamPlace, cloth: str) -> bool:
    """Whether a lining is sewn up of a cloth where it would reach a band: a sleeve's at a cuff."""
    return cloth in seam.cloths and (band.kind.id != "cuff" or seam.role.id in _limb(band))

"""What a place calls for by the cloths that it shares with others, or shares with none."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from typing import Final

from advisor.knowledge import nouns
from advisor.knowledge.model import Entry
from advisor.order.kinds import SeamPlace
from advisor.project.garment import Garment
from advisor.project.headwords import speaks_of
from advisor.project.making import Piece
from advisor.project.placing import singular_words

FASTENING: Final = "fastening"
BACKING, STAY = "backing", "stay-tape"
LINING, PIECES = "lining", 2
BACK: Final = "back"
ASIDE: Final = frozenset(
    {"side", "side-and-sleeve", "shoulder", "armhole", "underarm", "raglan", "panel", "yoke"}
    | {"sleeve-piece", "waist", "dart", "hood"}
)
"""Roles of what runs beside or across the middle of a back, and joins its halves nowhere."""
SEAT, SEAT_MM = "crotch", 250.0
"""The role of a seam that runs up the back, and how long one does so at least, mm: estimate."""
PART: Final = 0.75
"""The share of a back that an opening takes at most which ends above its hem: estimate."""
SHOULDER, YOKE = "shoulder", "yoke"
HELD: Final = nouns.HELD_UP | frozenset(
    {"waist", "waistband", "top-edge", "facing", "bagged-edge"}
    | {"collar-attach", "wrap-edge", "wrap-to-waist", "crotch"}
)
"""Roles of what holds a thing on the body."""
HOLDS_UP: Final = frozenset({"casing", "elastic-edge", "waistband", "ties", "shirring", "hook"})
"""Kinds of place that do."""
ENDED: Final = frozenset({"waist", "waistband", "hem", "lower-edge", "set-lining", "hem-frill"})
FINISHED: Final = frozenset({"hem", "bound-edge", "faced-edge", "casing", "elastic-edge"})
"""Roles and kinds of what takes the lower edge of a thing in."""

TOO_THICK: Final = 300.0
"""From this weight on no bag of a pocket is cut of a cloth, g/m2: estimate."""


def lining_in_pieces(place: SeamPlace, garment: Garment) -> bool:
    """Whether a lining that it takes in is cut in several pieces."""
    called = (p for p in garment.plan.pieces if LINING in singular_words(p.name))
    return sum(1 for piece in called if piece.cloth in place.cloths) >= PIECES


def stops_at_a_yoke(place: SeamPlace, places: Sequence[SeamPlace]) -> bool:
    """Whether the shoulders of the shell are cut of a yoke that its lining does not reach."""
    tops = {c for p in places if p.role.id == SHOULDER and p.unit != LINING for c in p.cloths}
    lined = [p for p in places if p.unit == "both" and set(p.cloths) & set(place.cloths)]
    yokes = (p for p in places if p.role.id == YOKE and p.unit != LINING)
    ends = any(set(p.cloths) & tops and set(p.cloths) - tops - set(place.cloths) for p in yokes)
    return ends and bool(tops) and not any(tops & set(p.cloths) for p in lined)


HEAD_MM: Final = (540.0, 480.0)
"""Below which length a neck passes over no head, of an adult and of a child: 56 to 60 cm round."""


def halves_not_joined(place: SeamPlace, places: Sequence[SeamPlace], garment: Garment) -> bool:
    """Whether a back is cut in two pieces that lie at a place, and nothing joins the two."""
    halves = {piece.cloth for piece in _halves(place, garment)}
    joined = {u.cloth for p in _joining(places) for u in p.seam.uses if _twice(u.cloth, p)}
    return bool(halves - joined)


def _halves(place: SeamPlace, garment: Garment) -> list[Piece]:
    """The pieces of a back that is cut in two, of a cloth of the place."""
    cut = [p for p in garment.plan.pieces if p.number == PIECES and p.cloth in place.cloths]
    words = [(set(singular_words(p.name)), p) for p in cut]
    return [
        piece for said, piece in words if BACK in said and not said & {*nouns.SMALL, LINING, "side"}
    ]


def _joining(places: Sequence[SeamPlace]) -> list[SeamPlace]:
    """What may run down the middle of a back."""
    twice = (p for p in places if p.kind.family not in (FASTENING, "laid on", BACKING))
    return [p for p in twice if _middle(p)]


def open_below(place: SeamPlace, places: Sequence[SeamPlace], garment: Garment) -> bool:
    """Whether a back in two halves opens part of the way down, and nothing joins it below that."""
    tall = max((piece.height for piece in _halves(place, garment)), default=0.0)
    down = [p for p in _joining(places) if BACK in singular_words(p.name)]
    edges = [p for p in down if p.kind.family == "edge" and 0 < p.seam.long_mm < PART * tall]
    return bool(edges) and not any(p.kind.family == "seam" for p in down)


def _middle(place: SeamPlace) -> bool:
    """Whether it may run down the middle of a back, by its role, its name and its length."""
    if place.role.id == SEAT:
        return not 0 < place.seam.long_mm < SEAT_MM
    return place.role.id not in ASIDE or BACK in singular_words(place.name)


def _twice(cloth: str, place: SeamPlace) -> bool:
    return sum(use.cloth == cloth for use in place.seam.uses) > 1


def ribbon_band(place: SeamPlace, entries: Mapping[str, Entry]) -> bool:
    """Whether a ribbon alone takes in what is drawn up."""
    flat = [use.cloth for use in place.seam.uses if use.cloth not in place.full]
    return bool(place.full and flat) and all("ribbon" in entries[name].id for name in flat)


def joined_to_nothing(place: SeamPlace, places: Sequence[SeamPlace]) -> bool:
    """Whether no place joins its cloths to the rest, and none of theirs holds them up."""
    cloths = set(place.cloths)
    while more := {c for p in places if cloths & set(p.cloths) for c in p.cloths} - cloths:
        cloths |= more
    own = [p for p in places if cloths & set(p.cloths)]
    held = any(p.role.id in HELD or p.kind.id in HOLDS_UP for p in own)
    return len(own) < len(places) and not held and not any(p.kind.family == FASTENING for p in own)


def opens_above_alone(place: SeamPlace, places: Sequence[SeamPlace]) -> bool:
    """Whether all that lets the wearer in lies in other cloths than what is drawn up at a place.

    Where the same cloth lies above and below, nobody can tell how far an opening runs on.
    """
    doors = [p for p in places if p.kind.family == FASTENING and p.unit != LINING]
    doors = [p for p in doors if not speaks_of(p.name, nouns.NO_DOOR)]
    above = {c for p in doors for c in p.cloths}
    return bool(above & set(place.cloths) and place.full) and not above & set(place.full)


def ends_raw_below(place: SeamPlace, places: Sequence[SeamPlace], garment: Garment) -> bool:
    """Whether nothing takes in the lower edge of what only the part of a place is cut of.

    It is sewn to no waist, and no hem, binding or facing of it lies elsewhere than above.
    """
    own = _of_its_part_alone(place, places, garment)
    held = [p for p in places if own & set(p.cloths)]
    below = (p for p in held if not speaks_of(p.name, nouns.UPPER_EDGE))
    return bool(own) and not any(
        p.role.id in ENDED
        or p.kind.id in FINISHED
        or nouns.LOWER_EDGE & set(singular_words(p.name))
        for p in below
        if p.kind.id != STAY
    )


def closes_nowhere(place: SeamPlace, places: Sequence[SeamPlace], garment: Garment) -> bool:
    """Whether no fastening holds a cloth that only the part of a place is cut of."""
    own = _of_its_part_alone(place, places, garment)
    held = (p for p in places if own & set(p.cloths))
    return bool(own) and not any(p.kind.family == FASTENING for p in held)


def _of_its_part_alone(place: SeamPlace, places: Sequence[SeamPlace], garment: Garment) -> set[str]:
    """The cloths of the part that a place is told to lie in, where nothing else is cut of them.

    None where it has another layer as well, for a list of seams may name one for both.
    """
    own = {n for part in garment.parts if part.name == place.seam.part for n in part.layers}
    others = {n for part in garment.parts if part.name != place.seam.part for n in part.layers}
    behind = {c for p in places if p.kind.family == BACKING for c in p.cloths}
    return set() if own & (others | behind) else own


def nothing_for_a_bag(place: SeamPlace, garment: Garment, entries: Mapping[str, Entry]) -> bool:
    """Whether all that lies at a pocket is skin or heavy cloth, and no piece is its bag."""
    cut = any(speaks_of(piece.name, nouns.BAGS) for piece in garment.plan.pieces)
    thick = (
        entries[name].structure == "skin"
        or (garment.cloths[name].weight or (0.0, 0.0))[0] >= TOO_THICK
        for name in place.cloths
    )
    return bool(place.cloths) and not cut and all(thick)


GIVES: Final = (1.0, 1.25, 1.5, 2.0)
"""How many times as long an edge is pulled at most, by its level of `stretch`: estimate."""


def no_head_passes(place: SeamPlace, garment: Garment, entries: Mapping[str, Entry]) -> bool:
    """Whether a neck of a said length, sewn once and not drawn in, is too narrow, also stretched.

    It gives as much as the firmest of its cloths.
    """
    least = HEAD_MM[garment.maker.worn_by == "child"]
    drawn = bool(place.full) or any("elastic" in entries[name].id for name in place.notions)
    levels = [
        (garment.cloths[c].traits.get("stretch") or entries[c].traits.get("stretch", (0, 0)))[1]
        for c in place.cloths
    ]
    wide = place.seam.long_mm * GIVES[min(levels, default=0)]
    round_it = place.seam.making.times == 1 and not drawn and place.kind.family != "stay"
    return round_it and speaks_of(place.name, nouns.ROUND_THE_NECK) and 0 < wide < least

"""What a tape covers: the seam of a neck or the tape of a zip, which is there before it.

A tape that is called after a line keeps that line from stretching, and comes first. One that is
called after the neck, where a hood, a rib or a collar without a facing leaves a seam there, hides
the allowances of that; and one that faces a zip hides its inner edge.
"""

from __future__ import annotations

from collections.abc import Sequence
from typing import Final

from advisor.knowledge import nouns
from advisor.order.kinds import SeamPlace
from advisor.project.headwords import speaks_of
from advisor.project.placing import singular_words

OVER_A_SEAM, COVER = "tape-over-a-seam", "cover-tape"
"""The method of such a tape, and the role that it has wherever it lies."""
FACES: Final = frozenset({"faced-edge", "lining-seam", "bound-edge", "front-band"})
TAPED: Final = frozenset({"stay-tape", "ribbon"})
"""Kinds of place of a tape that is stitched to one piece."""
JOINED_TO_NECK: Final = frozenset({"collar-attach", "neckband"})
OPEN_INSIDE: Final = frozenset({"seam", "neckband"})
"""Kinds of place that leave their allowances open on the inside."""


def covered_zip(place: SeamPlace, places: Sequence[SeamPlace]) -> bool:
    """Whether a tape lies over the tape of a zip that another place sets."""
    words = set(singular_words(place.name))
    zips = (p for p in places if p.kind.id == "zip")
    held = any(set(p.notions) & set(place.notions) for p in zips)
    named = "zip" in words and bool(nouns.HIDES & words) and any(p.kind.id == "zip" for p in places)
    return place.kind.id in TAPED and (held or named)


def covered_neck(place: SeamPlace, places: Sequence[SeamPlace]) -> bool:
    """Whether a tape is called after the neck, to which another place joins a hood or a rib."""
    words = set(singular_words(place.name))
    if place.kind.id not in TAPED or not nouns.NECKS & words or nouns.STAYS & words:
        return False
    return any(_leaves_a_seam(p, place) for p in places)


def _leaves_a_seam(joined: SeamPlace, tape: SeamPlace) -> bool:
    at_neck = joined.role.id in JOINED_TO_NECK and joined.kind.id in OPEN_INSIDE
    turned = joined.said("edge") == "turned"
    there = speaks_of(joined.name, nouns.NECKS) or joined.role.id == "collar-attach"
    shared = bool(set(joined.cloths) & set(tape.cloths))
    return at_neck and there and shared and not turned and joined.unit != "lining"


def covered_by(place: SeamPlace, places: Sequence[SeamPlace]) -> bool:
    """Whether a tape hides the allowances of this seam of the neck."""
    tapes = (p for p in places if covered_neck(p, places))
    return any(_leaves_a_seam(place, tape) for tape in tapes)


def zip_edge_open(place: SeamPlace, places: Sequence[SeamPlace]) -> bool:
    """Whether a zip is set to one layer, whose edge no facing and no lining takes in."""
    plies = [use.cloth for use in place.seam.uses if use.cloth in place.cloths]
    turned = (p for p in places if p.kind.id in FACES and p.name != place.name)
    faced = any(speaks_of(p.name, nouns.FACED_FRONT) for p in turned)
    return place.kind.id == "zip" and place.unit == "shell" and len(plies) == 1 and not faced

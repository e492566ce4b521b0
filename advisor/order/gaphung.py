"""What hangs from a place in layers or in a ring, and what of it nothing opens or closes."""

from __future__ import annotations

from collections.abc import Sequence
from typing import Final

from advisor.knowledge import nouns
from advisor.order.gapfacts import FASTENING
from advisor.order.kinds import SeamPlace
from advisor.order.layering import lining_cloths
from advisor.project.headwords import speaks_of
from advisor.project.linings import LINING
from advisor.project.placing import singular_words

ANYWHERE: Final = frozenset({"plain", "panel", "centre"})
"""Roles of a seam that may lie at the fastening, and be left open there."""
RING, SIDE = "ring-tier", "side"


def unopened(place: SeamPlace, places: Sequence[SeamPlace]) -> tuple[str, ...]:
    """Of several cloths that are drawn up at a place, those that nothing opens though others do."""
    if len(place.full) < 2:
        return ()
    beside = {SIDE} & {w for p in places if p.kind.id == "zip" for w in singular_words(p.name)}
    opened = {c for p in places if _opens(p, beside) for c in p.cloths}
    opened |= lining_cloths(places)  # a lining is felled to whatever opens there
    return tuple(c for c in place.full if c not in opened) if opened & set(place.full) else ()


def _opens(place: SeamPlace, beside: set[str]) -> bool:
    """Whether something is opened there; where the zip lies in a side, a side is left open."""
    words = set(singular_words(place.name))
    if place.unit == LINING or words & nouns.NO_WAY_IN:
        return False
    anywhere = place.kind.family == "seam" and place.role.id in ANYWHERE
    return anywhere or place.kind.family == FASTENING or bool(words & (nouns.OPENS_BEHIND | beside))


def open_rings(place: SeamPlace, places: Sequence[SeamPlace]) -> tuple[str, ...]:
    """The cloths of a ring that is set when all is round, which no seam makes a ring of."""
    if place.role.id != RING:
        return ()
    flat = {use.cloth for use in place.seam.uses if use.cloth not in place.full}
    own = set(place.full) - flat
    seams = (p for p in places if p.kind.family == "seam" and p.name != place.name)
    closed = {c for p in seams if set(p.cloths) <= own for c in p.cloths}
    return tuple(c for c in place.full if c in own - closed)


def runs_beside(place: SeamPlace) -> bool:
    """Whether it is the edge of an opening, or runs from arm to foot, of whatever part."""
    edge = place.kind.id == "faced-edge" and speaks_of(place.name, nouns.HALVES | {"opening"})
    return place.unit != LINING and (edge or place.role.id == "side-and-sleeve")

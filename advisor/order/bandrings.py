"""A waistband in pieces, as a flat front and a back that elastic draws in: one ring, set on as one.

Its sides are closed while nothing of it is sewn to the garment, what stiffens a piece is on that
before, and no end is left to be closed. What a folded band shuts in needs no finish.
"""

from __future__ import annotations

from collections.abc import Callable, Sequence
from typing import TYPE_CHECKING, Final

from advisor.knowledge import nouns
from advisor.project.companions import RING
from advisor.project.headwords import the_words

if TYPE_CHECKING:
    from advisor.order.facts import Facts
    from advisor.order.kinds import SeamPlace

CASING, FACED = "casing", "faced-edge"
SHUTS: Final = frozenset({"waistband", "cuff", "neckband", "casing"})
"""Kinds of band that are folded over whatever pieces them."""
FACING: Final = ("facing",)


def answers(place: SeamPlace, facts: Facts) -> dict[str, Callable[[], bool]]:
    """The facts of a place that are told here."""
    return {"channel in a band of its own": lambda: _cut_as_a_band(place, facts)}


def _cut_as_a_band(place: SeamPlace, facts: Facts) -> bool:
    """Whether a channel is a band that is cut by itself, as one of the pieces is called."""
    words = set(the_words(place.name))
    pieces = (set(the_words(p.name)) for p in facts.garment.plan.pieces if p.cloth in place.cloths)
    return place.kind.id == CASING and any(nouns.BANDS & cut and cut <= words for cut in pieces)


def closed_round(place: SeamPlace, places: Sequence[SeamPlace]) -> bool:
    """Whether the pieces of a band are joined to a ring at both ends, by a place beside it."""
    return any(place.name in hosts_of(p) for p in places if side_of_a_band(p))


def side_of_a_band(place: SeamPlace) -> bool:
    """Whether it joins the front of a band to its back."""
    return len(hosts_of(place)) > 1


def hosts_of(place: SeamPlace) -> tuple[str, ...]:
    """The names of the bands that a seam pieces or closes."""
    belongs = place.seam.companion
    return belongs.hosts if belongs is not None and belongs.what == RING else ()


def shut_in(place: SeamPlace, places: Sequence[SeamPlace]) -> bool:
    """Whether its edges lie inside a band: that is folded over them, or has a facing of its own."""
    about = [p for p in places if p.name in hosts_of(place)]
    folded = any(p.kind.id in SHUTS and p.said("edge") == "folded" for p in about)
    return folded or any(_faced(p, places) for p in (place, *about))


def _faced(band: SeamPlace, places: Sequence[SeamPlace]) -> bool:
    """Whether the facing of a hem band lies over the seam that sets it."""
    words = the_words(band.name)
    return nouns.BANDS & set(words) != set() and any(
        p.kind.id == FACED
        and the_words(p.name) == words + FACING
        and set(p.cloths) & set(band.cloths)
        for p in places
    )

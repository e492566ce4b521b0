"""Cartridge pleats, which are whipped fold by fold to a band that is finished before."""

from __future__ import annotations

from collections.abc import Callable, Mapping, Sequence
from typing import TYPE_CHECKING

from msgspec.structs import replace

from advisor.order.kinds import SeamPlace, crosses
from advisor.project.placing import singular_words
from advisor.project.together import CARTRIDGE

if TYPE_CHECKING:
    from advisor.knowledge.ordering import SeamKind
    from advisor.order.facts import Facts

BAND, GATHERED, WAIST = "waistband", "gathered-edge", "waist"


def answers(place: SeamPlace, facts: Facts) -> dict[str, Callable[[], bool]]:
    """The facts of a place that are told here."""
    return {
        "pleats whipped to it": lambda: any(_whipped(p, place) for p in facts.places),
        "band in one with its pleats": lambda: place.kind.id == BAND,
    }


def with_bands_first(
    places: tuple[SeamPlace, ...], roles: Mapping[str, SeamKind]
) -> tuple[SeamPlace, ...]:
    """The places, each row of cartridge pleats sewn over the band that it is whipped to."""
    rows = [p for p in places if _is_rows(p)]
    if not rows or WAIST not in roles:
        return places
    named = {p.name for p in rows}
    at_waist = tuple(replace(p, role=roles[WAIST]) if p.name in named else p for p in places)
    return tuple(_over_its_band(place, at_waist) for place in at_waist)


def _over_its_band(place: SeamPlace, places: Sequence[SeamPlace]) -> SeamPlace:
    if any(_whipped(rows, place) for rows in places):
        return replace(place, crosses=frozenset())
    bands = {band.name for band in places if _whipped(place, band)}
    if not bands:
        return place
    return replace(place, crosses=frozenset(bands | {p.name for p in places if crosses(place, p)}))


def _whipped(place: SeamPlace, band: SeamPlace) -> bool:
    own = set(band.cloths) & (set(place.cloths) - set(place.full))
    return _is_rows(place) and band.kind.id == BAND and bool(own) and band.alone == place.alone


def _is_rows(place: SeamPlace) -> bool:
    """Whether it is drawn up in cartridge pleats, by what it is called."""
    return place.kind.id == GATHERED and CARTRIDGE in singular_words(place.name)

"""Which method a place is made by: the one that the maker names, else the one that fits best.

A method fits where every key of its `fits` holds: the kind of seam or hem that the sheet picked,
a notion, a word of the name, a role, a way of gathering, a fact of the layers. Of several the one
that asks for more goes first, of equals the usual one of the kind, and so where none fits.
"""

from __future__ import annotations

from collections.abc import Iterable
from typing import TYPE_CHECKING

from msgspec.structs import replace

from advisor.claims.collect import Place
from advisor.claims.valuesets import Choice
from advisor.construction.fullness import drawn_up_by
from advisor.knowledge.places import Method
from advisor.order.covering import COVER, OVER_A_SEAM
from advisor.order.kinds import SeamPlace
from advisor.order.legs import with_channels_over_seats
from advisor.order.rain import sealed
from advisor.order.roles import holds_words
from advisor.project.linings import hung_apart

if TYPE_CHECKING:
    from advisor.order.facts import Facts

WEIGHTS = {
    "notions": 8,
    "facts": 9,
    "words": 6,
    "gathers": 4,
    "roles": 1,
    "seam": 2,
    "hem": 2,
    "beside": 5,
}
"""How telling each key is, so that what a place holds goes before what it is called (estimate)."""


def with_methods(places: Iterable[SeamPlace], facts: Facts) -> tuple[SeamPlace, ...]:
    """The places, each with its method."""
    chosen = ((place, method_of(place, facts)) for place in places)
    return with_channels_over_seats(
        [
            replace(_lying(place, method, facts), method=sealed(method, place, facts))
            for place, method in chosen
        ]
    )


def _lying(place: SeamPlace, method: Method, facts: Facts) -> SeamPlace:
    """The place with the role of what covers a finished seam, wherever its name says it lies."""
    role = facts.knowledge.order.kinds.get(COVER)
    return replace(place, role=role) if role and method.id == OVER_A_SEAM else place


def method_of(place: SeamPlace, facts: Facts) -> Method:
    """The method of a place; an empty one where the knowledge holds no methods."""
    methods = facts.knowledge.places.methods
    named = methods.get(place.seam.method)
    if named is not None and not refused(place, named, facts):
        return named
    fitting = [
        (score, method)
        for method in methods.values()
        if place.kind.id in method.makes and (score := _score(method, place, facts))
    ]
    if fitting:
        usual = place.kind.usual
        return min(fitting, key=lambda found: (-found[0], found[1].id != usual, found[1].id))[1]
    return methods.get(place.kind.usual, place.method)


def refused(place: SeamPlace, method: Method, facts: Facts) -> str:
    """Why a method that the maker named cannot be had; "" where it can."""
    for key in ("seam", "hem"):
        wanted = method.fits.get(key)
        verdict = facts.setups.judged(Place("seam", place.name)).get(f"{key}.kind")
        if wanted and verdict is not None and verdict.clash:
            others = [said for said in verdict.clash if said.claim.origin != "maker"]
            reason = others[0].claim.why if others else "a layer rules it out."
            return f"'{place.name}' cannot be made by {method.name}: {reason}"
    return ""


def _score(method: Method, place: SeamPlace, facts: Facts) -> int:
    """How much of what a method asks for the place has; 0 where anything is missing."""
    total = 0
    for key, words in method.fits.items():
        if not _holds(key, words, place, facts):
            return 0
        total += WEIGHTS[key]
    return total


def _kinds(place: SeamPlace, aspect: str, facts: Facts) -> frozenset[str]:
    """The kind of seam or hem that was picked, or all that are advised where any will do."""
    found = facts.setups.verdict(Place("seam", place.name), aspect)
    if found is None or not isinstance(found.advised, Choice):
        return frozenset()
    options = found.advised.options() if found.pick is None else (int(found.pick),)
    return frozenset(found.aspect.words[i] for i in options)


def _holds(key: str, words: tuple[str, ...], place: SeamPlace, facts: Facts) -> bool:
    if key in ("seam", "hem"):
        return not _kinds(place, f"{key}.kind", facts).isdisjoint(words)
    if key == "notions":
        entries = [facts.entry(name) for name in place.notions]
        return any(entry.id in words or entry.kind in words for entry in entries)
    if key == "roles":
        return place.role.id in words
    if key == "gathers":
        return drawn_up_by(place.seam) in words
    if key == "beside":
        every = {name: facts.entry(name) for name in facts.garment.cloths}
        return bool(hung_apart(place.seam, facts.garment.seams, every))
    if key == "words":
        called = (place.name, place.seam.fastening)
        return any(holds_words(name, word) for name in called for word in words)
    return all(facts.of_seam(fact, place) for fact in words)

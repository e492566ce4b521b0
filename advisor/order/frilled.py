"""Whether the free edge of a frill is finished: by a place of its own, a fold, or its own cloth."""

from __future__ import annotations

from collections.abc import Callable, Iterable
from typing import Final

from advisor.knowledge import nouns
from advisor.knowledge.model import Entry
from advisor.order.kinds import SeamPlace
from advisor.project.garment import Garment
from advisor.project.placing import singular_words

ENDS: Final = frozenset({"edge", "band", "casing"})
"""Families of places that finish an edge."""
LAID_ALONG: Final = frozenset({"ribbon", "raw-edge"})
"""Other kinds by which an edge is finished, or left on purpose."""
BORDERED: Final = "embellished"
"""The family of cloths that are bought with a worked border."""


def ends_as_cut(
    place: SeamPlace,
    places: Iterable[SeamPlace],
    garment: Garment,
    entry: Callable[[str], Entry],
) -> bool:
    """Whether a frill of one layer frays at its outer edge, which no place speaks of."""
    named = nouns.FRILLED & set(singular_words(place.name))
    folded = place.said("edge") in ("folded", "hem", "turned")
    ravelling = {name for name in place.full if _ravels(entry(name))}
    if not named or folded or not ravelling:
        return False
    done = {p.cloth for p in garment.plan.pieces if p.doubled or p.hem is not None}
    others = [p for p in places if p is not place]
    return any(
        name not in done and not any(_finishes(p, name, place, others) for p in others)
        for name in ravelling
    )


def _ravels(entry: Entry) -> bool:
    return entry.traits.get("frays", (0, 0))[1] > 0 and entry.family != BORDERED


def _finishes(edge: SeamPlace, cloth: str, frill: SeamPlace, others: list[SeamPlace]) -> bool:
    """Whether a place finishes the edge of a frill: it says so, or nothing else is of its cloth."""
    ends = edge.kind.family in ENDS or edge.kind.id in LAID_ALONG
    if not ends or cloth not in edge.cloths:
        return False
    called = nouns.FRILLED & set(singular_words(edge.name))
    joined = any(cloth in p.cloths and p.kind.family == "seam" for p in others)
    return bool(called) or not joined or (frill.role.last and edge.role.last)

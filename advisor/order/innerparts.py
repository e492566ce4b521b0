"""What hangs inside a garment from its upper edges alone, as the bra within a swimsuit.

A part of which every cloth hangs free is closed to nothing else: the edges above take it in.
"""

from __future__ import annotations

from typing import TYPE_CHECKING, Final

from advisor.knowledge import nouns
from advisor.order.kinds import SeamPlace
from advisor.project.headwords import speaks_of

if TYPE_CHECKING:
    from advisor.order.facts import Facts

EDGES: Final = frozenset({"bound-edge", "elastic-edge", "faced-edge"})
"""Kinds of edge that take in what hangs behind them."""


def hangs_inside(place: SeamPlace, facts: Facts) -> bool:
    """Whether its part hangs free with all its cloths, and some edge above holds one of them."""
    free = _free(facts).get(place.seam.part, frozenset())
    return any(_above(edge) and free & set(edge.cloths) for edge in _others(place, facts))


def takes_in_inner(place: SeamPlace, facts: Facts) -> bool:
    """Whether such a part is caught in this edge."""
    parts = _free(facts)
    held = {p.seam.part for p in _others(place, facts) if p.seam.part in parts}
    own = place.seam.part in parts
    return _above(place) and not own and any(parts[name] & set(place.cloths) for name in held)


def _others(place: SeamPlace, facts: Facts) -> list[SeamPlace]:
    return [p for p in facts.places if p.seam.part != place.seam.part]


def _free(facts: Facts) -> dict[str, frozenset[str]]:
    """The parts that hang free with all their cloths; one part alone is the garment.

    One with a hem is a lining, which hangs out from its edge before that is sewn.
    """
    hemmed = {p.seam.part for p in facts.places if p.kind.id == "hem"}
    parts = facts.garment.parts if len(facts.garment.parts) > 1 else ()
    return {
        part.name: frozenset(part.layers)
        for part in parts
        if part.layers and part.name not in hemmed and set(part.layers) <= set(part.separate)
    }


def _above(edge: SeamPlace) -> bool:
    return edge.kind.id in EDGES and speaks_of(edge.name, nouns.UPPER_EDGE)

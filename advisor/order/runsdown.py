"""The edges that run down to the hem and end in it, though they hold no cloth of that."""

from __future__ import annotations

from collections.abc import Iterable
from typing import Final

from advisor.knowledge import nouns
from advisor.order import namewords as called
from advisor.order.kinds import SeamPlace, crosses, related, same_unit
from advisor.project.headwords import speaks_of
from advisor.project.placing import singular_words

EDGES: Final = frozenset({"facing", "wrap-edge"})
CUT_APART: Final = "front-band-cut-apart"
"""How a band is made whose foot is left for the hem."""
SIDE: Final = "side"


def ends_in(hem: SeamPlace, edge: SeamPlace) -> bool:
    """Whether a front edge that is as long as the whole front ends in a hem, whatever it is of.

    A hem that is said to run over other edges only is believed.
    """
    if crosses(hem, edge):
        return edge.role.id in EDGES and hem.role.last
    whole = edge.seam.long_mm >= called.WHOLE_FRONT_MM
    front = edge.role.id in EDGES and speaks_of(edge.name, nouns.FRONT_OPENING)
    return hem.role.last and front and whole and hem.crosses is None and same_unit(hem, edge)


def _stops_above(edge: SeamPlace, places: Iterable[SeamPlace]) -> bool:
    """Whether an edge from the neck is no longer than the side below its armhole: it ends above."""
    sides = (p for p in places if p.role.id == SIDE and same_unit(p, edge))
    longest = max((p.seam.long_mm for p in sides), default=0.0)
    return 0 < edge.seam.long_mm <= longest


def met_under_the_iron(hot: SeamPlace, place: SeamPlace) -> bool:
    """Whether the iron at the one comes over what the other has joined."""
    said = place.name in (hot.crosses or ())
    return related(hot, place) or said or ends_in(hot, place)


def _ends_a_band(hem: SeamPlace, band: SeamPlace) -> bool:
    """Whether the open foot of a band cut by itself lies at a hem, which takes it in."""
    return hem.role.last and same_unit(hem, band) and (crosses(hem, band) or related(hem, band))


def closed_over_its_end(hem: SeamPlace, places: Iterable[SeamPlace]) -> str:
    """What is said of the facings whose lower end lies at a hem; "" where none does."""
    if speaks_of(hem.name, nouns.ON_SLEEVE):
        return ""  # no edge of the body runs down a sleeve
    every = tuple(places)
    edges = (p for p in every if p.kind.id == "faced-edge" and ends_in(hem, p))
    feet = [p.name for p in edges if _runs_down(p) and not _stops_above(p, every)]
    feet += [p.name for p in every if p.method.id == CUT_APART and _ends_a_band(hem, p)]
    return f", the foot of {' and '.join(feet)} closed over its end" if feet else ""


def _runs_down(edge: SeamPlace) -> bool:
    """Whether the lower end of an edge may lie at a hem: round a neck or a face there is none."""
    words = set(singular_words(edge.name))
    return bool(nouns.FRONT_OPENING & words) or not nouns.NO_FRONT_EDGE & words

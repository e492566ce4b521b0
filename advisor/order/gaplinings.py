"""What a lining calls for that no place names: a seam of its panels, the end of a sleeve."""

from __future__ import annotations

from collections.abc import Sequence

from advisor.knowledge import nouns
from advisor.order.kinds import SeamPlace
from advisor.order.layering import lining_ends
from advisor.project.garment import Garment
from advisor.project.placing import singular_words

PANEL, SLEEVE_HEM, SIDE = "panel", "sleeve-hem", "side"


def panels_not_joined(place: SeamPlace, places: Sequence[SeamPlace], garment: Garment) -> bool:
    """Whether the lining of a place is cut in fronts and side fronts, and nothing joins these.

    So it is with a back and side backs; darts or pleats take no piece in.
    """
    pieces = [set(singular_words(p.name)) for p in garment.plan.pieces if p.cloth in place.cloths]
    halves = [
        half
        for half in nouns.HALVES
        if any(half in words and SIDE in words for words in pieces)
        and any(half in words and SIDE not in words for words in pieces)
    ]
    joined = any(p.role.id == PANEL and set(p.cloths) <= set(place.cloths) for p in places)
    return bool(halves) and not joined


def skirt_lining_unsewn(places: Sequence[SeamPlace], garment: Garment) -> bool:
    """Whether a skirt lining is cut in pieces called so, and nothing is sewn of it."""
    lining = {n for p in places if p.unit == "lining" for n in p.cloths}
    called = [set(singular_words(p.name)) for p in garment.plan.pieces if p.cloth in lining]
    pieces = [words for words in called if nouns.SKIRTS & words]
    sewn = any(
        nouns.SKIRTS & set(singular_words(p.name)) and lining & set(p.cloths) for p in places
    )
    return len(pieces) > 1 and not sewn


def sleeve_ends_nowhere(places: Sequence[SeamPlace]) -> bool:
    """Whether the order of work fells no lining of a sleeve to its hem."""
    hems = [p for p in places if p.role.id == SLEEVE_HEM]
    return bool(hems) and not any(lining_ends(p, places) for p in hems)

"""What no fitting moves: it lies in a piece that is drawn up at a waist, or under gathered rows."""

from __future__ import annotations

from collections.abc import Iterable

from advisor.knowledge import nouns
from advisor.order.kinds import SeamPlace, crosses, feeds
from advisor.order.namewords import GATHERED, PAIR
from advisor.project.placing import singular_words

WAIST, RING = "waist", "ring-tier"


def lies_in_fullness(place: SeamPlace, places: Iterable[SeamPlace]) -> bool:
    """Whether a slit is cut into a skirt that is gathered: its middle stays where it is.

    Where the same cloth lies flat above as well, its name has to say that it lies below.
    """
    words = set(singular_words(f"{place.name} {place.seam.part}"))
    for waist in places:
        if waist.role.id != WAIST or not feeds(place, waist):
            continue
        flat = {use.cloth for use in waist.seam.uses if use.fullness <= GATHERED}
        below = not flat & set(place.cloths) or bool(nouns.SKIRTED & words)
        if below and not nouns.WITH_A_BODICE & words:
            return True
    return False


def lies_under_rows(place: SeamPlace, places: Iterable[SeamPlace]) -> bool:
    """Whether rows of what is drawn up lie across a seam of their base: it is closed for good."""
    rows = (p for p in places if p.role.id == RING and p.seam.making.times > PAIR)
    return any(crosses(p, place) for p in rows)

"""What lies in a piece that is drawn up at a waist: no fitting moves it, it is gathered."""

from __future__ import annotations

from collections.abc import Iterable

from advisor.knowledge import nouns
from advisor.order.kinds import SeamPlace, feeds
from advisor.order.namewords import GATHERED
from advisor.project.placing import singular_words

WAIST = "waist"


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

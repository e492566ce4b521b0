"""What lies at the upper edge of a skirt or of trousers: the tape in its seam, hanging loops."""

from __future__ import annotations

from collections.abc import Sequence
from typing import Final

from advisor.knowledge import nouns
from advisor.order.fitting import JOINED
from advisor.order.kinds import SeamPlace, takes_in_both
from advisor.order.layering import waist_edge
from advisor.order.namewords import UPPER_ROLES
from advisor.project.placing import singular_words

STAY_TAPE, WAIST = "stay-tape", "waist"
BAND, FASTENING = "waistband", "fastening"
AT_THE_NECK: Final = "at the middle of the back neck, or where the garment hangs from"
AT_THE_SIDES: Final = "at each side of the waist"


def from_the_waist(place: SeamPlace, places: Sequence[SeamPlace]) -> bool:
    """Whether it belongs to what hangs from a waist and has nothing above that."""
    own = [p for p in places if p.alone == place.alone]
    bands = [p for p in own if p.kind.id == BAND]
    joined = [p for p in own if p.kind.family in JOINED]
    joined = [p for p in joined if not any(takes_in_both(band, p) for band in bands)]
    above = any(p.role.id in UPPER_ROLES or _above(p) for p in own)
    above = above or any(p.role.id == WAIST for p in joined)
    return not above and any(waist_edge(p, places) for p in own)


def _above(place: SeamPlace) -> bool:
    return bool(nouns.ABOVE & {*singular_words(place.name), *singular_words(place.seam.part)})


def tape_round_waist(place: SeamPlace, places: Sequence[SeamPlace]) -> bool:
    """Whether it is a tape along the upper edge of a skirt, caught in the seam of that."""
    called = WAIST in singular_words(place.name)
    return place.kind.id == STAY_TAPE and called and from_the_waist(place, places)


def hung_by(place: SeamPlace, places: Sequence[SeamPlace]) -> str:
    """Where loops to hang it by are caught in."""
    return AT_THE_SIDES if from_the_waist(place, places) else AT_THE_NECK


def fastens_the_band(place: SeamPlace, places: Sequence[SeamPlace]) -> bool:
    """Whether it closes the waistband of a skirt or of trousers, which hang from it when worn."""
    band = any(p.kind.id == BAND and p.alone == place.alone for p in places)
    called = bool({WAIST, BAND} & set(singular_words(place.name)))
    return place.kind.family == FASTENING and called and band and from_the_waist(place, places)

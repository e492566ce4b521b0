"""Which cloths line a garment, which places shut such a lining in, and what only parts are.

A lining is what has seams of its own that are the lining's, and none of the shell's; so a silk
that nobody calls a lining is one all the same.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence

from advisor.knowledge.model import Entry
from advisor.order.kinds import UPPER_ROLES, SeamPlace
from advisor.order.roles import POCKET_FLAP
from advisor.project.linings import LINING
from advisor.project.placing import singular_words

SHUT = frozenset({"edge", "band", "seam"})
"""Families of places in which a lining may be caught between or against the shell."""
WAIST, LININGS = "waist", "linings"
BACKING = frozenset({"sheers", "linings"})
CALLED_BACKING = frozenset(
    {"back", "backing", "support", "underlining", "interlining", "mount", "mounting", "flatlining"}
)
"""Words in the name of a cloth that say that it backs another."""


def lining_cloths(places: Sequence[SeamPlace]) -> frozenset[str]:
    """The cloths of the seams of the lining that make no seam of the shell by themselves."""
    seams = [p for p in places if p.kind.family == "seam"]
    lining = {c for p in seams if _of_the_lining(p) for c in p.cloths}
    alone = (p for p in seams if not _of_the_lining(p) and len(p.cloths) == 1)
    return frozenset(lining - {p.cloths[0] for p in alone})


def _of_the_lining(place: SeamPlace) -> bool:
    named = LINING in singular_words(place.name) and place.unit == "shell"
    return place.unit == "lining" or (named and len(place.cloths) == 1)


def takes_in_lining(place: SeamPlace, places: Sequence[SeamPlace]) -> bool:
    """Whether a place holds the lining and something of the shell."""
    if place.unit == "both":
        return True
    lining = lining_cloths(places) & set(place.cloths)
    return bool(lining) and lining != set(place.cloths)


def hangs_lined(place: SeamPlace, places: Sequence[SeamPlace]) -> bool:
    """Whether a lining hangs from this band, or falls to this hem."""
    return place.kind.id in ("waistband", "hem") and takes_in_lining(place, places)


def hung(place: SeamPlace, entries: Mapping[str, Entry]) -> frozenset[str]:
    """The linings that a waistband takes in: they only hang in it, and strain nothing."""
    taken = place.kind.id == "waistband" and place.unit == "both"
    linings = (name for name in place.cloths if entries[name].family == LININGS)
    return frozenset(linings if taken else ())


def shuts_in_lining(place: SeamPlace, places: Sequence[SeamPlace]) -> bool:
    """Whether the lining is not to be got at from inside once this place is sewn."""
    flap = place.role.id == POCKET_FLAP
    return place.kind.family in SHUT and not flap and takes_in_lining(place, places)


def waist_edge(place: SeamPlace, places: Sequence[SeamPlace]) -> bool:
    """Whether it takes in the upper edge of a skirt or of trousers, which is cut on a curve."""
    band = place.kind.id == "waistband"
    faced = place.kind.id == "faced-edge" and WAIST in singular_words(place.name)
    return (band or faced) and not any(p.role.id in UPPER_ROLES for p in places)

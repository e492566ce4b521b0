"""Which cloths line a garment, which places shut such a lining in, and what only parts are.

A lining is what has seams of its own that are the lining's, and none of the shell's; so a silk
that nobody calls a lining is one all the same.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence

from msgspec.structs import replace

from advisor.knowledge import nouns
from advisor.knowledge.model import Entry
from advisor.order.channels import of_a_strip
from advisor.order.kinds import SeamPlace
from advisor.order.namewords import UPPER_ROLES
from advisor.order.roles import POCKET_FLAP
from advisor.project.garment import Seam
from advisor.project.headwords import speaks_of
from advisor.project.linings import COVERS, LINING, worn_under
from advisor.project.placing import singular_words

SHUT = frozenset({"edge", "band", "seam"})
"""Families of places in which a lining may be caught between or against the shell."""
WAIST, LININGS, FLAP = "waist", "linings", "flap"
YOKE, TWO = "yoke", 2
JOINED = "lining-seam"
BAGGED, SLEEVE_HEM, VENT = "bagged-lining", "sleeve-hem", "vent"
NARROW = frozenset({"narrow-rolled-hem", "hand-rolled-hem", "hem-left-raw", "overlocked-hem"})
"""Methods of a hem that turns no allowance up."""
HEM, LEGS = "hem", frozenset({"crotch", "inseam"})
LENGTHWISE = frozenset({"side", "centre"})
SLEEVED = frozenset({"underarm", "armhole"})
"""Roles of the seams of a lining that make its sleeves and set them in."""
BACKING = frozenset({"sheers", "linings"})


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
    if worn_under(place.seam):
        return False
    lining = lining_cloths(places) & set(place.cloths)
    return bool(lining) and lining != set(place.cloths)


def hangs_lined(place: SeamPlace, places: Sequence[SeamPlace]) -> bool:
    """Whether a lining hangs from this band, or falls to this hem."""
    taken = place.kind.id in ("waistband", "hem") and takes_in_lining(place, places)
    return taken or lining_ends(place, places)


def lining_ends(place: SeamPlace, places: Sequence[SeamPlace]) -> bool:
    """Whether a lining that hangs in the garment ends at this hem, and no place of its own ends it.

    One that is bagged is joined there; a bodice's ends at its waist, and never comes so far.
    """
    levelled = place.kind.id == "hem" and place.unit == "shell" and not place.role.flat
    if not levelled or not _lining_set(places):
        return False
    own = [p for p in places if p.unit == "lining" and p.kind.family == "seam"]
    ends = [p for p in places if p.unit != "shell" and _ends_lining(p)]
    if place.role.id == SLEEVE_HEM and any(map(ends_at_the_sleeve_hem, places)):
        return False
    if place.role.id == SLEEVE_HEM:
        sleeves = any(p.role.id in SLEEVED for p in own)
        return sleeves and not any(p.role.id in (SLEEVE_HEM, "cuff") for p in ends)
    body = any(p.role.id not in SLEEVED for p in own)
    waist = any(p.role.id == WAIST for p in places) and not _runs_on(own, places)
    return body and not waist and not any(p.role.id not in (SLEEVE_HEM, "cuff") for p in ends)


def ends_at_the_sleeve_hem(place: SeamPlace) -> bool:
    """Whether the lining of a sleeve is joined to the hem of that here."""
    words = set(singular_words(place.name))
    return place.kind.id == JOINED and HEM in words and bool(nouns.ON_SLEEVE & words)


HUNG_FROM = frozenset({"bagged-edge", "top-edge"})
"""Edges that are turned to a lining, which then hangs from them."""


def lining_loose_at_vent(place: SeamPlace, places: Sequence[SeamPlace]) -> bool:
    """Whether a lining hangs behind the vent of a body or a skirt, and no place is of both."""
    named = any(p.unit != "shell" and nouns.VENTS & set(singular_words(p.name)) for p in places)
    behind = any(p.unit == "lining" and p.kind.family == "seam" for p in places)
    turned = any(p.role.id in HUNG_FROM and p.unit == "both" for p in places)
    return (
        place.role.id == VENT
        and place.unit == "shell"
        and behind
        and not named
        and (turned or _lining_set(places))
    )


def lining_ends_at_waist(place: SeamPlace, places: Sequence[SeamPlace]) -> bool:
    """Whether a lining set here is a bodice's alone, and nothing else joins it to the waist."""
    if speaks_of(place.name, nouns.HELD_BELOW):
        return False
    others = [p for p in places if p.unit != "shell" and p.name != place.name]
    below = any(p.role.id == WAIST or "skirt" in singular_words(p.name) for p in others)
    waist = any(p.role.id == WAIST and p.unit == "shell" for p in places)
    own = [p for p in others if p.unit == "lining" and p.kind.family == "seam"]
    joins = [p for p in places if p.kind.id == JOINED]
    if any(WAIST in singular_words(p.name) for p in joins) or _told_before(place, joins):
        return False
    ends = below or _runs_on(own, places) or any(_ends_lining(p) for p in others)
    return waist and bool(own) and not ends


def _told_before(place: SeamPlace, joins: Sequence[SeamPlace]) -> bool:
    """Whether a lining is joined to the shell at an edge that stands before this: told once."""
    edges = [p.name for p in joins if not speaks_of(p.name, nouns.HELD_BELOW)]
    return place.kind.id == JOINED and place.name in edges[1:]


def _runs_on(own: Sequence[SeamPlace], places: Sequence[SeamPlace]) -> bool:
    """Whether the seams of a lining are much longer than those of the shell above the waist."""
    sides = (p for p in places if p.unit == "shell" and p.role.id in LENGTHWISE)
    upper = [p.seam.long_mm for p in sides if "skirt" not in singular_words(p.name)]
    least, longest = max(upper, default=0.0), max((p.seam.long_mm for p in own), default=0.0)
    return bool(least) and longest > COVERS * least


def lining_swings(place: SeamPlace, places: Sequence[SeamPlace]) -> bool:
    """Whether a lining that is hemmed apart hangs behind a deep hem of the shell, round no leg.

    A bias drops as it likes, and a rolled or raw edge has no allowance to hold a chain.
    """
    shells = [p for p in places if p.role.id == HEM and p.unit == "shell"]
    deep = bool(shells) and not any(p.method.id in NARROW for p in shells)
    loose = any(p.said("bias") == "yes" or p.role.id in LEGS for p in places)
    return place.role.id == HEM and deep and not loose


def _lining_set(places: Sequence[SeamPlace]) -> bool:
    """Whether a lining hangs in the garment, from facings or a waistband, and is not bagged."""
    joins = [p for p in places if p.kind.id == "lining-seam"]
    if any(p.method.id == BAGGED for p in joins):
        return False
    hangs = any(not speaks_of(p.name, nouns.HELD_BELOW) for p in joins)
    return hangs or any(p.kind.id == "waistband" and p.unit == "both" for p in places)


def _ends_lining(place: SeamPlace) -> bool:
    """Whether the lower edge of a lining is finished here."""
    rib = place.kind.id == "neckband" and place.role.id == "cuff"
    if of_a_strip(place) or place.role.id == "hood-casing":
        return False  # at the waist of the shell, or round the face: the lining hangs on below
    return rib or place.kind.id in ("hem", "cuff", "elastic-edge", "bound-edge", "casing")


def with_linings_hung(places: Sequence[SeamPlace]) -> tuple[SeamPlace, ...]:
    """The places, the waistband joining shell and lining where nothing else holds the lining up.

    Who makes up a lining for a skirt or trousers, and names no place where it is joined, hangs it
    in the band: it hangs nowhere else.
    """
    lined = any(p.unit == "lining" and p.kind.family == "seam" for p in places)
    held = any(_holds_up(p) for p in places) or any(p.role.id in UPPER_ROLES for p in places)
    if not lined or held:
        return tuple(places)
    bands = {p.name for p in places if p.kind.id == "waistband" and p.unit == "shell"}
    return tuple(replace(p, unit="both") if p.name in bands else p for p in places)


def _holds_up(place: SeamPlace) -> bool:
    """Whether the lining hangs from this place: neither a hem, a vent, a zip nor a pocket does."""
    if (
        place.unit == "shell"
        or place.role.last
        or nouns.HELD_BELOW & set(singular_words(place.name))
    ):
        return False
    seamed = place.unit == "both" and place.kind.family == "seam" and place.role.id != "pocket"
    return seamed or place.kind.family in ("band", "casing", "edge")


def hung(place: SeamPlace, entries: Mapping[str, Entry]) -> frozenset[str]:
    """The linings that a waistband takes in: they only hang in it, and strain nothing."""
    taken = place.kind.id == "waistband" and place.unit == "both"
    linings = (name for name in place.cloths if entries[name].family == LININGS)
    return frozenset(linings if taken else ())


def quilted(seams: Sequence[Seam]) -> frozenset[str]:
    """The cloths that the maker quilts to one: their rows hold each edge by themselves."""
    return frozenset(c for seam in seams if seam.place == "quilting" for c in seam.cloths())


def of_a_yoke(cloth: str, place: SeamPlace) -> bool:
    """Whether it is the inner of two layers of yoke, between which the edges lie."""
    return place.kind.id == YOKE and len(place.cloths) > TWO and place.cloths[-1] == cloth


def shuts_in_lining(place: SeamPlace, places: Sequence[SeamPlace]) -> bool:
    """Whether the lining is not to be got at from inside once this place is sewn."""
    flap = place.role.id in (POCKET_FLAP, FLAP)
    return place.kind.family in SHUT and not flap and takes_in_lining(place, places)


def waist_edge(place: SeamPlace, places: Sequence[SeamPlace]) -> bool:
    """Whether it takes in the upper edge of a skirt or of trousers, which is cut on a curve."""
    band = place.kind.id == "waistband"
    faced = place.kind.id == "faced-edge" and WAIST in singular_words(place.name)
    own = (p for p in places if p.alone == place.alone)
    return (band or faced) and not any(p.role.id in UPPER_ROLES for p in own)

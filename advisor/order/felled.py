"""What is told of a lining at the edge that it is joined to, once and where it belongs."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from typing import TYPE_CHECKING, Final

from advisor.knowledge import nouns
from advisor.order.bodicelining import EDGE
from advisor.order.kinds import SeamPlace
from advisor.order.layering import (
    JOINED,
    WAIST,
    ends_at_the_sleeve_hem,
    lining_cloths,
    lining_ends_at_waist,
)
from advisor.order.namewords import SHOULDERED
from advisor.order.openings import is_bagged
from advisor.order.yokelining import ends_at_a_yoke
from advisor.project.companions import felled_over
from advisor.project.headwords import speaks_of
from advisor.project.placing import singular_words

if TYPE_CHECKING:
    from advisor.order.facts import Facts

ARMHOLE: Final = "armhole"
FACED: Final = "faced-edge"
HANGS: Final = frozenset({JOINED, FACED})
"""Kinds of place from which a lining hangs."""
BAGGED: Final = frozenset(
    {
        "facing",
        "neckband",
        "collar-attach",
        "lower-edge",
        "cuff",
        "leg-band",
        "set-lining",
        "binding",
    }
)
"""Roles of what joins a whole shell to a whole lining."""
OVER_ITS_SEAM: Final = "lining-seam-felled-by-hand"


def answers(place: SeamPlace, facts: Facts) -> dict[str, Callable[[], bool]]:
    """The facts of a place that are told here."""
    return {
        "catches the lining": lambda: catches_the_lining(place, facts.places),
        "felled over a seam": lambda: felled_over_a_seam(place, facts.places),
        "lining felled to its edge": lambda: felled_to_its_edge(place, facts.places),
        "felled at a sleeve hem": lambda: felled_at_a_sleeve_hem(place, facts.places),
        "felled at the waist": lambda: place.role.id == EDGE,
        "lining ends at the waist": lambda: lining_ends_at_waist(place, facts.places),
    }


def catches_the_lining(place: SeamPlace, places: Sequence[SeamPlace]) -> bool:
    """Whether its step holds the allowances of the lining at shoulders and underarms: one does.

    What is felled there holds it already, and no lower edge reaches so far up.
    """
    joins = [p for p in places if p.kind.id == JOINED]
    if any(felled_over_a_seam(p, places) and ARMHOLE in singular_words(p.name) for p in joins):
        return False
    upper = [p.name for p in joins if not speaks_of(p.name, nouns.NOT_FELLED_ABOVE)]
    shouldered = any(p.role.id in SHOULDERED for p in places)
    return shouldered and place.name in upper[:1] and not ends_at_a_yoke(place, places)


def felled_to_its_edge(place: SeamPlace, places: Sequence[SeamPlace]) -> bool:
    """Whether an edge is turned in by itself and the lining felled to it by hand.

    So it is where the file sews the edge by hand and its last layer has seams of the lining.
    """
    edge = place.kind.id == FACED and place.said("stitched by") == "hand"
    return edge and place.unit == "both" and place.cloths[-1] in lining_cloths(places)


def felled_at_a_sleeve_hem(place: SeamPlace, places: Sequence[SeamPlace]) -> bool:
    """Whether it ends the lining of a sleeve at the hem of that; turned through, it is a seam."""
    gap = any(p.seam.making.left_open or is_bagged(p) for p in places)
    return ends_at_the_sleeve_hem(place) and not gap


def felled_over_a_seam(place: SeamPlace, places: Sequence[SeamPlace]) -> bool:
    """Whether a lining is turned under over a seam that is sewn and shut in from the other side.

    At an armhole that a sleeve is set into, or at a waist where the lining hangs from an edge
    above it already: in so small a ring no machine reaches the line.
    """
    words = set(singular_words(place.name))
    if place.kind.id != JOINED:
        return False
    if felled_over(place.seam):
        return True
    if ARMHOLE in words:
        return any(p.role.id == ARMHOLE and p.unit == "shell" and _joins(p) for p in places)
    above = any(
        p.kind.id in HANGS
        and p.name != place.name
        and nouns.UPPER_EDGE & set(singular_words(p.name))
        for p in places
        if set(place.cloths) <= set(p.cloths)
    )
    waist = any(p.role.id == WAIST and p.unit == "shell" for p in places)
    return WAIST in words and waist and above


def _joins(place: SeamPlace) -> bool:
    return place.kind.family in ("seam", "gathers")


def bagged(place: SeamPlace, places: Sequence[SeamPlace]) -> bool:
    """Whether shell and lining are joined here wrong side out, to be turned through a gap.

    Edges that are turned through the shoulders are joined while the sides are still open, and a
    hood, a pocket or a flap is turned by itself.
    """
    joins = place.unit == "both" and place.kind.family in ("edge", "band", "seam")
    gap = any(p.seam.making.left_open for p in places)
    return joins and gap and place.role.id in BAGGED


def felled_over_it(shell: SeamPlace, lining: SeamPlace) -> bool:
    """Whether the seam of a quilted lining is felled by hand over this one of the shell."""
    seams = shell.kind.family == "seam" and shell.unit == "shell"
    return seams and lining.method.id == OVER_ITS_SEAM and shell.role.id == lining.role.id

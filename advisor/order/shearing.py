"""Deep pile and wadding in a seam: what of them is cut away before the seam is sewn."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from typing import TYPE_CHECKING

from advisor.construction.cleared import is_wadding
from advisor.knowledge.ordering import Operation
from advisor.order.kinds import SeamPlace
from advisor.project.garment import Garment

if TYPE_CHECKING:
    from advisor.order.facts import Facts

TWO = 2
THINNED, CATCHING = ("unwad", "shear"), ("join", "set-lining")
"""Work on wadding and on a deep pile before a seam, and the work that catches them."""
POCKET, WADDED = "patch-pocket", "quilted"
BASTED, EARLY = "baste", "neaten-early"
FIRST_SEWN = (EARLY, *CATCHING, "fold-under", "lay-on")
DEEP = 2
"""The level of `pile` that is deep."""


def with_shearing(listed: list[Operation], works: Mapping[str, Operation]) -> list[Operation]:
    """The pieces of work on a place with what thins its allowances before any work on those."""
    at = next((k for k, op in enumerate(listed) if op.id in FIRST_SEWN), None)
    thin = [works[id_] for id_ in THINNED if id_ in works]
    return listed if at is None else [*listed[:at], *thin, *listed[at:]]


def thinned_when_tried(chosen: list[Operation], place: SeamPlace, facts: Facts) -> list[Operation]:
    """The work on a place, its allowances thinned and neatened only when it has been tried on.

    Nothing that is cut out of them or shorn off comes back where the seam is let out.
    """
    ids = [op.id for op in chosen]
    thin = {*THINNED} & {*ids}
    if not thin or BASTED not in ids or not facts.fitting.basted(place):
        return chosen
    at = ids.index(BASTED) + 1
    later = [op for op in chosen[:at] if op.id in {*thin, EARLY}]
    return [op for op in chosen[:at] if op not in later] + later + chosen[at:]


def wadded(place: SeamPlace, facts: Facts) -> list[str]:
    """The cloths of which a seam takes in the wadding; what is bound has no allowance."""
    sewn = place.op in CATCHING or place.kind.id == POCKET
    return (
        [c for c in place.cloths if facts.entry(c).id == WADDED] if sewn and not place.binds else []
    )


def deep_pile(place: SeamPlace, facts: Facts, *, knitted: bool = False) -> list[str]:
    """The cloths whose deep pile a seam may catch; that of a knitted ground is sheared off it.

    The hair of a skin or of mohair is pushed out of the seam and not cut.
    """
    if place.op not in CATCHING:
        return []
    deep = [c for c in place.cloths if facts.least(c, "pile") >= DEEP]
    return [c for c in deep if not knitted or facts.entry(c).structure == "knit"]


def answers(place: SeamPlace, facts: Facts) -> dict[str, Callable[[], bool]]:
    """The facts of a place that are told here."""
    loose = [n for n in place.seam.cloths() if is_wadding(n, facts.garment)]
    return {
        "wadding in its hem": lambda: (
            place.kind.id == "hem" and any(facts.entry(c).id == WADDED for c in place.cloths)
        ),
        "loose wadding in it": lambda: bool(loose),
    }


def is_bare(place: SeamPlace, garment: Garment) -> bool:
    """Whether loose wadding is quilted to one cloth alone, and its other side lies bare."""
    layers = place.seam.cloths()
    loose = [n for n in layers if is_wadding(n, garment)]
    return bool(loose) and len(layers) - len(loose) < TWO


def laid_out(place: SeamPlace, garment: Garment) -> str:
    """How the layers of a quilting lie on each other while they are basted."""
    if is_bare(place, garment):
        return "the wadding below and the shell face up on it"
    if not any(is_wadding(name, garment) for name in place.seam.cloths()):
        return "lining face down and the shell face up on it"
    return "lining face down, wadding on it and the shell face up"

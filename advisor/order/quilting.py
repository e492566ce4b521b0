"""Shell and lining that are quilted to each other without wadding, and yet have seams of their own.

Their rows stop short of every seam line, so that the shell is joined alone and the lining over it.
Quilted for good, nothing is let out any more, so of a new pattern the shell is tried on first.
"""

from __future__ import annotations

from collections.abc import Callable, Sequence
from typing import TYPE_CHECKING, Final

from advisor.construction.cleared import QUILTING, is_wadding
from advisor.knowledge.ordering import Operation
from advisor.order.kinds import SeamPlace
from advisor.order.untried import DOWN_THE_BODY
from advisor.project.garment import Garment

if TYPE_CHECKING:
    from advisor.order.facts import Facts
    from advisor.order.fitting import Fitting

BOUND: Final = "bound-buttonhole"
WITH_THE_BASTING: Final = frozenset({"baste", "stay", "stay-stitch", "tape"})
"""Work on a seam that is only basted to be tried on, while its pieces are still roomy."""
JOINED: Final = frozenset({"seam", "gathers"})
"""Families of places that join pieces to each other."""


def sewn_apart(place: SeamPlace, places: Sequence[SeamPlace], garment: Garment) -> bool:
    """Whether the cloths that are quilted there have seams of their own, each without the other."""
    layers = place.seam.cloths()
    if place.kind.id != QUILTING or any(is_wadding(name, garment) for name in layers):
        return False
    shell, inner = place.cloths[:1], place.cloths[1:]
    seams = [set(p.cloths) for p in places if p.kind.family in JOINED]
    alone = any(set(shell) <= cloths and not cloths & set(inner) for cloths in seams)
    return alone and any(cloths <= set(inner) for cloths in seams if cloths)


def waits_for_the_fitting(place: SeamPlace, fitting: Fitting) -> bool:
    """Whether layers are quilted for good that nobody has tried on in this pattern."""
    return fitting.cut_anew and sewn_apart(place, fitting.places, fitting.garment)


def cut_after_the_fitting(place: SeamPlace, fitting: Fitting) -> bool:
    """Whether it is basted on roomy pieces, which are quilted and cut to the line after it."""
    body = place.role.id in DOWN_THE_BODY and place.unit == "shell" and place.op == "join"
    return body and any(
        set(p.cloths) & set(place.cloths) and waits_for_the_fitting(p, fitting)
        for p in fitting.places
    )


def on_the_quilted(op: Operation, place: SeamPlace, fitting: Fitting) -> bool:
    """Whether a stage is worked on pieces that are quilted by then.

    What is only basted to be tried on comes before it, and a buttonhole that is bound in the shell.
    Pieces that are quilted by themselves, as cuffs beside a collar, wait for no other quilting.
    """
    if place.kind.id == QUILTING:
        return False
    if op.id in WITH_THE_BASTING and cut_after_the_fitting(place, fitting):
        return False
    apart = any(sewn_apart(p, fitting.places, fitting.garment) for p in fitting.places)
    return place.method.id != BOUND or not apart


def answers(place: SeamPlace, facts: Facts) -> dict[str, Callable[[], bool]]:
    """The facts of a place that are told here."""
    return {
        "quilted seam by seam": lambda: sewn_apart(place, facts.places, facts.garment),
        "quilted lining sewn by hand": lambda: _by_hand(place, facts.places, facts.garment),
        "quilted from edge to edge": lambda: not sewn_apart(place, facts.places, facts.garment),
    }


def _by_hand(place: SeamPlace, places: Sequence[SeamPlace], garment: Garment) -> bool:
    """Whether it joins the lining of what is quilted, and the file has it sewn by hand."""
    apart = (p for p in places if sewn_apart(p, places, garment))
    inner = any(set(place.cloths) <= set(p.cloths[1:]) for p in apart)
    return inner and place.said("stitched by") == "hand"

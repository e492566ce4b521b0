"""The ends of a sash that hang from a seam, and which seam takes them in."""

from __future__ import annotations

from collections.abc import Callable, Iterable
from typing import TYPE_CHECKING, Final

from advisor.knowledge.ordering import Operation
from advisor.order.kinds import SeamPlace, crosses
from advisor.project.placing import singular_words

if TYPE_CHECKING:
    from advisor.order.facts import Facts

TIES, SASH, TWO = "ties", "sash", 2
CAUGHT_IN: Final = "sash-ends-caught-in"
"""The method of ends that are made up apart and laid in a seam."""


def answers(place: SeamPlace, facts: Facts) -> dict[str, Callable[[], bool]]:
    """The facts of a place that are told here."""
    return {
        "ends of a sash": lambda: hangs_from_a_seam(place, facts.places),
        "a seam takes it in": lambda: bool(taken_in_by(place, facts.places)),
    }


def hangs_from_a_seam(place: SeamPlace, places: Iterable[SeamPlace]) -> bool:
    """Whether it is an end of a sash, of which there are two: a whole one is tied round by itself.

    A whole one that a seam takes in hangs from that, too.
    """
    sash = place.kind.id == TIES and SASH in singular_words(place.name)
    return sash and (place.seam.making.times >= TWO or bool(taken_in_by(place, places)))


def taken_in_by(sash: SeamPlace, places: Iterable[SeamPlace]) -> tuple[str, ...]:
    """The seams that are closed over its ends: as the project says, or as their layers tell.

    A seam that names its cloth beside others, where that cloth is of nothing else, holds its ends.
    """
    rest = [p for p in places if p.name != sash.name and p.kind.family != "fastening"]
    own = set(sash.cloths)
    listed = [p for p in rest if own & set(p.cloths)]
    held = all(len(set(p.cloths) - own) > 0 for p in listed)
    seams = (p for p in rest if p.kind.family in ("seam", "edge", "band"))
    return tuple(p.name for p in seams if crosses(p, sash) or (held and p in listed))


def asks_for_its_seam(sash: SeamPlace, places: Iterable[SeamPlace]) -> bool:
    """Whether its ends hang from a seam, and none is said to take them in."""
    every = tuple(places)
    return hangs_from_a_seam(sash, every) and not taken_in_by(sash, every)


def laid_in(op: Operation, sash: SeamPlace, places: Iterable[SeamPlace]) -> str:
    """The seams in which its raw ends are laid, in words; "" of any other stage or place."""
    laid = op.id == "baste" and sash.method.id == CAUGHT_IN
    return " or ".join(taken_in_by(sash, places)) if laid else ""

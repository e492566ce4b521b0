"""What takes in the ends of an elastic or of a strap, and which straps are buttoned at one end."""

from __future__ import annotations

from collections.abc import Callable, Iterable
from typing import TYPE_CHECKING, Final

from advisor.claims.edged import straps_of
from advisor.knowledge import nouns
from advisor.order.kinds import SeamPlace, crosses
from advisor.order.untried import BEHIND
from advisor.project.buttons import HOLES
from advisor.project.headwords import speaks_of
from advisor.project.placing import singular_words
from advisor.project.waisttabs import end_the_body

if TYPE_CHECKING:
    from advisor.order.facts import Facts

CASING: Final = "casing"
ELASTIC: Final = "elastic"
STRAP: Final = "strap"
GREAT: Final = 3
"""The level of `stretch` of what clings by itself."""
HELD_ABOVE: Final = frozenset({"shoulder", "armhole", "crotch", "inseam", "waistband", "raglan"})


def answers(place: SeamPlace, facts: Facts) -> dict[str, Callable[[], bool]]:
    """The facts of a place that are told here."""
    return {
        "ends taken in": lambda: _taken_in(place, facts),
        "rouleau": lambda: speaks_of(place.name, nouns.ROULEAUX),
        "no rouleau": lambda: not speaks_of(place.name, nouns.ROULEAUX),
        "cinches the body": lambda: (
            any(p.role.id in HELD_ABOVE for p in facts.places)
            and not bought_ready(place, facts)
            and not _gives(place, facts)
        ),
        "elastic in a tube": lambda: (
            not bought_ready(place, facts)
            and any(
                piece.cloth in place.cloths and STRAP in singular_words(piece.name)
                for piece in facts.garment.plan.pieces
            )
        ),
        "one piece drawn up": lambda: (
            sum(u.cloth in place.cloths for u in place.seam.uses) == 1 and bool(place.full)
        ),
        "lower edge faced": lambda: place.role.last and place.kind.id == "faced-edge",
        "strap of cloth": lambda: bool(place.cloths),
        "ends free": lambda: not _taken_in(place, facts),
        "caught in the armhole": lambda: _wing(place, facts),
        "holes in it": lambda: bool(_holes_in(place, facts)) and not place.notions,
    }


def tabs_of_waist(place: SeamPlace, places: Iterable[SeamPlace]) -> bool:
    """Whether tabs are made up that hang all round from a waist, which is sewn over their ends."""
    waist = any(p.role.id == "waist" and p.unit != "lining" and p is not place for p in places)
    return place.kind.id == "ties" and end_the_body(place.seam) and waist


def bought_ready(strap: SeamPlace, facts: Facts) -> bool:
    """Whether a strap is an elastic with one cloth beside it: that is what its ends are sewn to.

    Two plies of cloth make a tube, which may be drawn up by an elastic within.
    """
    elastic = any(facts.entry(name).kind == ELASTIC for name in strap.notions)
    return elastic and sum(u.cloth in strap.cloths for u in strap.seam.uses) <= 1


def _gives(strap: SeamPlace, facts: Facts) -> bool:
    """Whether all its cloths stretch far: such a strap holds up, and draws nothing in."""
    return bool(strap.cloths) and all(facts.least(c, "stretch") >= GREAT for c in strap.cloths)


def _wing(place: SeamPlace, facts: Facts) -> bool:
    """Whether it is a wing at the shoulder, and an armhole is there to take its open edge in."""
    return place.role.id == "wing" and any(p.role.id == "armhole" for p in facts.places)


def _taken_in(place: SeamPlace, facts: Facts) -> bool:
    """Whether a seam is closed over its ends later."""
    return any(p.op == "join" and crosses(p, place) for p in facts.places)


def back_of_straps(place: SeamPlace, facts: Facts) -> bool:
    """Whether it is the channel behind in which the sewn ends of buttoned straps are caught."""
    behind = place.kind.id == CASING and BEHIND in singular_words(place.name)
    return behind and _buttoned(facts)


def front_of_straps(place: SeamPlace, facts: Facts) -> bool:
    """Whether straps are only buttoned to this edge, so that no end of them is caught in it."""
    return BEHIND not in singular_words(place.name) and _buttoned(facts)


def _buttoned(facts: Facts) -> bool:
    return any(_holes_in(place, facts) for place in facts.places)


def _holes_in(strap: SeamPlace, facts: Facts) -> list[SeamPlace]:
    """The places of holes that are worked in this strap."""
    holes = (p for p in facts.places if p.kind.id == HOLES)
    return [p for p in holes if strap.seam in straps_of(p.seam, facts.garment)]

"""Pockets whose bag, or the hole that buttons them, is a place of its own, and which of them it is.

`side pocket bag` closes the pockets of the side and none of the back.
"""

from __future__ import annotations

from collections.abc import Callable, Sequence
from typing import TYPE_CHECKING, Final

from advisor.knowledge import nouns
from advisor.order.kinds import SeamPlace
from advisor.order.roles import POCKET_FLAP, POCKET_ZIP
from advisor.project.placing import POCKETS, singular_words

if TYPE_CHECKING:
    from advisor.order.facts import Facts

BAG, POCKET, TAPE = "bag", "pocket", "tape"
SLIT, HOLE, FLAP = "welt-pocket", "buttonhole", "flap"
BUTTONHOLES: Final = "machine buttonholes"


def answers(place: SeamPlace, facts: Facts) -> dict[str, Callable[[], bool]]:
    """The facts of a place that are told here."""
    return {
        "opening of its own": lambda: bool(_others(place, facts.places, bags=False)),
        "bag apart": lambda: bool(_others(place, facts.places, bags=True)),
        "bag not apart": lambda: not _others(place, facts.places, bags=True),
        "mouth under strain": lambda: (
            place.said("stress") == "high"
            and not any(facts.entry(name).kind == TAPE for name in place.notions)
        ),
        "no machine buttonhole": lambda: (
            _straight_alone(facts) or any(facts.avoids(c, BUTTONHOLES) for c in place.cloths)
        ),
    }


def _others(place: SeamPlace, places: Sequence[SeamPlace], *, bags: bool) -> list[SeamPlace]:
    """The bags of a pocket, or else its openings, where they are places of their own."""
    pockets = [p for p in places if p.kind.id in POCKETS or p.role.id == POCKET_ZIP]
    parts = [p for p in pockets if p.name != place.name and is_bag(p) == bags]
    return [p for p in parts if not _of_another(p, place, pockets)]


def is_bag(place: SeamPlace) -> bool:
    """Whether a place is called a bag."""
    return BAG in singular_words(place.name)


def _of_another(one: SeamPlace, other: SeamPlace, pockets: Sequence[SeamPlace]) -> bool:
    """Whether what says which pocket it belongs to names another one than this."""
    bag, opening = (one, other) if is_bag(one) else (other, one)
    own = _which(bag)
    named = [p for p in pockets if not is_bag(p) and own & _which(p)]
    return bool(own) and bool(named) and opening.name not in {p.name for p in named}


def _which(place: SeamPlace) -> frozenset[str]:
    return frozenset(singular_words(place.name)) - nouns.ANY_POCKET


def buttoned_slit(place: SeamPlace, places: Sequence[SeamPlace]) -> bool:
    """Whether it is the hole by which a pocket in a slit is buttoned: its bag is open till then."""
    words = set(singular_words(place.name))
    named = place.kind.id == HOLE and POCKET in words and FLAP not in words
    flaps = any(p.role.id == POCKET_FLAP for p in places)
    return named and not flaps and any(p.kind.id == SLIT for p in places)


def _straight_alone(facts: Facts) -> bool:
    """Whether she sews on no machine that works buttonholes, nor has a foot that does."""
    return not facts.setups.zigzags and HOLE not in (facts.garment.maker.feet or ())

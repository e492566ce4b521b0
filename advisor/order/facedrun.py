"""The facings of a neck and of the fronts below it: pieced at the shoulders, sewn on in one seam.

So they are made where one cloth faces both edges and nothing ends between them: a collar set at
lapels or on a stand keeps the two apart, and a collar that is caught in lies within the one seam.
"""

from __future__ import annotations

from collections.abc import Callable, Sequence
from typing import TYPE_CHECKING, Final

from advisor.knowledge import nouns
from advisor.order.kinds import SeamPlace, same_unit
from advisor.project.placing import singular_words

if TYPE_CHECKING:
    from advisor.order.facts import Facts

FACED: Final = "faced-edge"
FRONT, FACING = "front", "facing"
CAUGHT: Final = "collar-set"
"""The method of a collar that lies between the neck and its facing."""
ON_INTO: Final = ", the row run on from {front} round the neck and down the other front"
IN_ONE: Final = "; that of {front} in the same run"


def answers(place: SeamPlace, facts: Facts) -> dict[str, Callable[[], bool]]:
    """The facts of a place that are told here."""
    return {
        "pieced with a front facing": lambda: bool(runs_on_from(place, facts.places)),
        "free facing edge": lambda: _free_edge(place, facts),
    }


def _free_edge(place: SeamPlace, facts: Facts) -> bool:
    """Whether the inner edge of its facing frays, and no lining or longer facing takes it in."""
    plies = [use.cloth for use in place.seam.uses if use.cloth in place.cloths]
    named = place.role.id == FACING and FACING in _words(place)
    lined = any(p.kind.id == "lining-seam" for p in facts.places)
    own = named and not lined and not of_a_longer_facing(place, facts.places)
    return own and len(plies) > 1 and facts.least(plies[-1], "frays") > 0


def one_facing(places: Sequence[SeamPlace]) -> tuple[SeamPlace, SeamPlace] | None:
    """The facing of the front and that of the neck which are one; None where there is no such."""
    facings = [p for p in places if p.kind.id == FACED and p.role.id == FACING and p.cloths]
    fronts = [p for p in facings if FRONT in _words(p) and not nouns.NECKS & _words(p)]
    necks = [p for p in facings if nouns.NECKS & _words(p) and FRONT not in _words(p)]
    collars = [p for p in places if p.kind.id == "collar"]
    apart = any(p.method.id != CAUGHT for p in collars)
    pairs = ((f, n) for f in fronts for n in necks if _of_one_cloth(f, n))
    return None if apart else next(pairs, None)


def runs_on_from(place: SeamPlace, places: Sequence[SeamPlace]) -> str:
    """The front facing that a neck facing is one with; "" where it is a facing by itself."""
    pair = one_facing(places)
    return pair[0].name if pair is not None and pair[1].name == place.name else ""


def with_the_front(place: SeamPlace, places: Sequence[SeamPlace]) -> str:
    """What is told of the free edge of such a neck facing."""
    front = runs_on_from(place, places)
    return IN_ONE.format(front=front) if front else ""


def of_a_longer_facing(place: SeamPlace, places: Sequence[SeamPlace]) -> bool:
    """Whether it is the front of such a facing; its free edge is neatened with that of the neck."""
    pair = one_facing(places)
    return pair is not None and pair[0].name == place.name


def _of_one_cloth(front: SeamPlace, neck: SeamPlace) -> bool:
    """Whether the same cloth faces both, and both are named after facings."""
    named = all(FACING in _words(p) for p in (front, neck))
    return named and same_unit(front, neck) and front.cloths[-1] == neck.cloths[-1]


def _words(place: SeamPlace) -> set[str]:
    return set(singular_words(place.name))

"""The channel of a cord at the waist of a coat or an anorak: a strip laid on inside, at a level."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from typing import TYPE_CHECKING, Final

from advisor.knowledge import nouns
from advisor.order.kinds import SeamPlace
from advisor.order.namewords import EYELET
from advisor.project.headwords import speaks_of
from advisor.project.placing import singular_words

if TYPE_CHECKING:
    from advisor.order.facts import Facts
    from advisor.order.fitting import Fitting

CASING, HOOD, ELASTIC = "casing", "hood", "elastic"
HOLES: Final = "open-for-cord"
"""The work that makes holes where a cord comes out."""


HOLE: Final = "buttonhole"


def answers(place: SeamPlace, facts: Facts) -> dict[str, Callable[[], bool]]:
    """The facts of a place that are told here."""
    return {
        "channel of a strip": lambda: of_a_strip(place),
        "no eyelets named": lambda: (
            not facts.named_near(EYELET, place)
            and not any(_for_a_cord(p) and p.cloths[0] in place.cloths for p in facts.places)
        ),
        "hole for a cord": lambda: _for_a_cord(place),
        "elastic beside the cord": lambda: any(
            facts.entry(name).kind == ELASTIC for name in place.notions
        ),
    }


def _for_a_cord(place: SeamPlace) -> bool:
    """Whether it is a buttonhole out of which the cord of a channel comes."""
    return place.kind.id == HOLE and speaks_of(place.name, nouns.CORDED)


def of_a_strip(place: SeamPlace) -> bool:
    """Whether a channel is a strip of another cloth, laid on: no edge is folded for it."""
    other = len(set(place.cloths)) > 1 and place.said("edge") not in ("folded", "turned")
    return place.kind.id == CASING and other and HOOD not in singular_words(place.name)


def level_open(place: SeamPlace, work: str, fitting: Fitting) -> bool:
    """Whether holes lie at a level of the body that only the fitting settles."""
    waist = place.kind.id == CASING and speaks_of(place.name, nouns.LOW_BANDS)
    return work == HOLES and waist and of_a_strip(place) and fitting.may_move(place)


def levels_to_mark(places: Sequence[SeamPlace], fitting: Fitting) -> str:
    """What is marked at the fitting for such holes; "" where there are none."""
    open_still = [p.name for p in places if level_open(p, HOLES, fitting)]
    return f"; tie a tape round and mark the level of {open_still[0]}" if open_still else ""

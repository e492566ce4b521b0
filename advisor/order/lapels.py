"""An edge that is turned back as it is worn: a lapel, or a shawl collar in one with the front.

Above the point where it breaks over, its facing is the outside of the garment.
"""

from __future__ import annotations

from collections.abc import Iterable
from typing import TYPE_CHECKING

from advisor.knowledge import nouns
from advisor.order.kinds import SeamPlace
from advisor.project.placing import singular_words

if TYPE_CHECKING:
    from advisor.order.facts import Facts

LAPEL, ROLL_LINE = "lapel", "roll-line"
CANVAS, OF_A_COLLAR = "canvas", "collar-padded-by-hand"


def turned_back(place: SeamPlace, places: Iterable[SeamPlace]) -> bool:
    """Whether the inner side is seen: by the name of the edge, or a roll line taped in a front."""
    words = set(singular_words(place.name))
    if LAPEL in words or words >= nouns.SHAWL:
        return True
    front = place.role.id == "facing" and "front" in words
    return front and any(p.role.id == ROLL_LINE for p in places)


def may_turn_back(place: SeamPlace, places: Iterable[SeamPlace]) -> bool:
    """Whether a front may have a lapel: it is called so, or a canvas is padded to its cloth."""
    front = place.role.id == "facing" and "front" in singular_words(place.name)
    canvas = (p for p in places if p.kind.id == CANVAS and p.method.id != OF_A_COLLAR)
    padded = {n for p in canvas for n in p.cloths}
    return turned_back(place, places) or (front and bool(padded & set(place.cloths)))


def canvas_of_a_front(place: SeamPlace, facts: Facts) -> bool:
    """Whether a canvas is named between a front and its facing: it is basted to the front."""
    front = place.role.id == "facing" and "front" in singular_words(place.name)
    return front and any(facts.entry(name).kind == "canvas" for name in place.notions)

"""The lining of a hood at its neck: held to the hood before one seam takes in both."""

from __future__ import annotations

from collections.abc import Callable
from typing import TYPE_CHECKING, Final

from advisor.project.placing import singular_words

if TYPE_CHECKING:
    from advisor.order.facts import Facts
    from advisor.order.kinds import SeamPlace

HOOD: Final = "hood"
HOLDS: Final = "hold the lining at"
"""The verb of that holding: it waits for the fitting, for which the hood alone is basted on."""
SETS_IT, FACE, JOINED, BOTH = "collar-attach", "hood-edge", "lining-seam", "both"


def answers(place: SeamPlace, facts: Facts) -> dict[str, Callable[[], bool]]:
    """The facts of a place that are told here."""
    return {"hood hangs lined": lambda: _held_here(place, facts)}


def _held_here(place: SeamPlace, facts: Facts) -> bool:
    """Whether it sets a hood that is turned with its lining, which no other place joins below."""
    if place.role.id != SETS_IT or HOOD not in singular_words(place.name):
        return False
    lined = any(p.role.id == FACE and p.unit == BOTH for p in facts.places)
    joins = (p for p in facts.places if p.kind.id == JOINED)
    return lined and not any(HOOD in singular_words(p.name) for p in joins)

"""What closes a flap: tape goes on single layers before it is turned, a snap through all of it.

Listed among the layers of what is turned, neither lies in its seam.
"""

from __future__ import annotations

from collections.abc import Callable
from typing import TYPE_CHECKING, Final

from advisor.project.placing import singular_words

if TYPE_CHECKING:
    from advisor.order.facts import Facts
    from advisor.order.kinds import SeamPlace

TOUCH_TAPE: Final = "hook-and-loop"
"""The kind of the tape, whose two halves lie on different pieces."""
SET_SNAP, SNAPS = "set-snap", "snap"
"""The id of a snap that is set with a die, and the kind of place where snaps are told."""


def answers(place: SeamPlace, facts: Facts) -> dict[str, Callable[[], bool]]:
    """The facts of a place that are told here."""
    return {
        "touch tape in it": lambda: held_by_tape(place, facts),
        "set snap in it": lambda: _snaps_of_its_own(place, facts),
    }


def held_by_tape(place: SeamPlace, facts: Facts) -> bool:
    """Whether a tape that closes it is told among its layers."""
    return any(facts.entry(name).kind == TOUCH_TAPE for name in place.notions)


def _snaps_of_its_own(place: SeamPlace, facts: Facts) -> bool:
    """Whether set snaps are told in what is turned, and no place of snaps is called after it."""
    words = set(singular_words(place.name))
    holds = any(facts.entry(name).id == SET_SNAP for name in place.notions)
    snaps = (p for p in facts.places if p.kind.id == SNAPS)
    return holds and not any(words <= {*singular_words(p.name)} for p in snaps)

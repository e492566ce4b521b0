"""Curved seams that shape the body: open, their edges pull on one side and ripple on the other."""

from __future__ import annotations

from collections.abc import Callable
from typing import TYPE_CHECKING, Final

from advisor.order.backed import backings
from advisor.order.namewords import OVER_BOTH

if TYPE_CHECKING:
    from advisor.order.facts import Facts
    from advisor.order.kinds import SeamPlace

PANEL: Final = "panel"
BONED: Final = frozenset({"boning", "boned-seam"})


def answers(place: SeamPlace, facts: Facts) -> dict[str, Callable[[], bool]]:
    """The facts of a place that are told here."""
    return {
        "shaping curve pressed open": lambda: clips_a_curve(place, facts),
        "clipped before it is pressed": lambda: _clipped_first(place, facts),
        "pressed as it is sewn": lambda: not _clipped_first(place, facts),
    }


def _clipped_first(place: SeamPlace, facts: Facts) -> bool:
    """Whether a curve is clipped into its closed allowances, so that it lies only then."""
    graded = facts.graded(place) and not to_one_width(place, facts)
    return graded and place.said("shape") == "curved" and not facts.open_seam(place)


def to_one_width(place: SeamPlace, facts: Facts) -> bool:
    """Whether one row or one strip takes both edges of a closed seam, as wide as each other."""
    over = facts.setups.finish(place) in OVER_BOTH and not facts.open_seam(place)
    return over and facts.neatened(place)


def clips_a_curve(place: SeamPlace, facts: Facts) -> bool:
    """Whether it is a curved seam between panels of wovens, mounted or not, that is pressed open.

    Beside bones the allowances are kept whole: they hold the channels, and no iron comes back.
    """
    if any(p.kind.id in BONED for p in facts.places):
        return False
    curved = place.role.id == PANEL and place.said("shape") == "curved"
    own = backings(place, facts.places) & set(place.cloths) or place.cloths
    woven = all(facts.entry(name).structure == "woven" for name in own)
    return curved and woven and place.op == "join" and facts.open_seam(place)

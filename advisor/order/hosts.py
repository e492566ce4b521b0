"""Where a place that belongs to another stands in the order: before that is sewn, or upon it."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from typing import TYPE_CHECKING, Final

from advisor.knowledge import nouns
from advisor.order.belonging import SET_LINING
from advisor.order.kinds import SeamPlace
from advisor.order.slits import slits_lined
from advisor.project.attached import BONES, ENDS
from advisor.project.companions import BAND_ENDS, BOUND, INNER, LINING, OUTER, RING
from advisor.project.headwords import speaks_of, the_words

if TYPE_CHECKING:
    from advisor.order.facts import Facts

CHANNEL: Final = frozenset({"channel", "casing"})
"""Words of what a bone goes into."""
ITS_BAND: Final = "its band"
"""How precedences call a band whose outer edge or ends are places of their own."""
MADE_FOR: Final = "made for it"
"""How precedences call what is made before the place that it belongs to."""


def answers(place: SeamPlace, facts: Facts) -> dict[str, Callable[[], bool]]:
    """The facts of a place that follow from those that belong to it."""
    return {
        "lined by another place": lambda: _has(place, facts, LINING),
        "ring not told": lambda: not _has(place, facts, RING),
        "ends told here": lambda: not _has(place, facts, ENDS),
        "ends of another strap": lambda: _is(place, ENDS),
        "outer edge of a band": lambda: _is(place, OUTER),
        "ends of a band": lambda: _is(place, BAND_ENDS),
        "ends closed here": lambda: not _has(place, facts, BAND_ENDS),
        "open inner edge": lambda: not _has(place, facts, INNER),
        "lining sewn by hand": lambda: (
            place.said("stitched by") == "hand"
            and place.role.id == SET_LINING
            and not speaks_of(place.name, nouns.RIBBED_ENDS)
            and not slits_lined(place, facts)
        ),
    }


def edged_apart(band: SeamPlace, places: Sequence[SeamPlace], *, faced: bool = False) -> bool:
    """Whether places of their own sew the facing to a waistband, or close its ends.

    With `faced`, whether one of them sews the facing on.
    """
    whats = (OUTER,) if faced else (OUTER, BAND_ENDS)
    return any(_of(other, band, what) for other in places for what in whats)


def bound_elsewhere(seam: SeamPlace, places: Sequence[SeamPlace]) -> bool:
    """Whether a place of its own binds the edges of a seam, so that nothing else neatens them."""
    return any(_of(other, seam, BOUND) for other in places)


def _has(place: SeamPlace, facts: Facts, what: str) -> bool:
    return any(_of(other, place, what) for other in facts.places)


def _is(place: SeamPlace, what: str) -> bool:
    belongs = place.seam.companion
    return belongs is not None and belongs.what == what


def host_words(place: SeamPlace) -> dict[str, str]:
    """What a sentence calls the places that this one belongs to, and the channels of its bones."""
    belongs = place.seam.companion
    host = " and ".join(belongs.hosts) if belongs is not None else place.name
    channels = host if CHANNEL & set(the_words(host)) else f"the channels of {host}"
    return {"host": host, "channels": channels}


def filled_by_another(place: SeamPlace, facts: Facts) -> bool:
    """Whether it is a channel that is left empty for the bones of another place."""
    return _has(place, facts, BONES)


def _of(one: SeamPlace, host: SeamPlace, what: str) -> bool:
    belongs = one.seam.companion
    return belongs is not None and belongs.what == what and host.name in belongs.hosts


def stands(where: str, a: SeamPlace, b: SeamPlace) -> bool:
    """Whether a place is made for another that comes after it, or upon one before it."""
    if where == MADE_FOR:
        belongs = a.seam.companion
        return belongs is not None and belongs.first and b.name in belongs.hosts
    if where == ITS_BAND:
        return _of(a, b, OUTER) or _of(a, b, BAND_ENDS)
    belongs = b.seam.companion
    return belongs is not None and not belongs.first and a.name in belongs.hosts

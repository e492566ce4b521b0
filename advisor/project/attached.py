"""What is made to go with another place, and is no second one of its kind.

The guard of a fly lies behind its zip, the ends of a strap are sewn on where another place says so,
and bones lie in the channels that another place stitches.
"""

from __future__ import annotations

from collections.abc import Iterable
from typing import Final

from advisor.knowledge import nouns
from advisor.project.garment import Seam
from advisor.project.headwords import the_words
from advisor.project.nextto import Beside, belongs_as

GUARD, ENDS, BONES = "guard", "attachment", "bones"
"""What such a place is to the other."""
GUARDS: Final = frozenset({"shield", "guard"})
"""Words of what lies behind a fastening and keeps it off the skin."""
TO: Final = frozenset({"to", "at"})
ZIP, STRAPS, CHANNELS, SLID_IN = "zip", "ties", "boning", "bones-slid-in"
FACED, BONE = "faced-edge", "bone"


def guard(place: Beside) -> Seam | None:
    """The guard of a fly or another zip: made up by itself, and sewn in with that."""
    stem = place.words[:-1]
    fits = bool(GUARDS & set(place.words[-1:])) and not place.holds(ZIP)
    zips = [other for other in place.others if other.place == ZIP]
    hosts = [other for other in zips if stem and the_words(other.name)[: len(stem)] == stem]
    hosts = hosts or (zips if stem == (ZIP,) and len(zips) == 1 else [])
    return belongs_as(place, FACED, GUARD, hosts[:1], first=True) if fits and hosts else None


def strap_ends(place: Beside) -> Seam | None:
    """Where straps are sewn on that another place makes up."""
    if place.seam.place != STRAPS:
        return None
    hosts = [other for stem in _stems(place.words) for other in place.called(stem)]
    hosts = [other for other in hosts if other.place == STRAPS]
    return belongs_as(place, STRAPS, ENDS, hosts[:1], first=False) if hosts else None


def sews_on(seam: Seam) -> bool:
    """Whether it is where the ends of a strap are sewn on, and no strap by itself."""
    return seam.companion is not None and seam.companion.what == ENDS


def ends_elsewhere(seam: Seam, others: Iterable[Seam]) -> bool:
    """Whether another place says where the ends of a strap are sewn on."""
    joinings = (other.companion for other in others if sews_on(other))
    return any(joining is not None and seam.name in joining.hosts for joining in joinings)


def _stems(words: tuple[str, ...]) -> list[tuple[str, ...]]:
    """What a name says is sewn on there: `strap` of `strap joining` and of `strap to top edge`."""
    found = [words[:-1]] if nouns.JOINING & set(words[-1:]) else []
    found += [words[1:]] if nouns.ATTACHED & set(words[:1]) else []
    return found + [words[:at] for at, word in enumerate(words) if at and word in TO]


def slid_in(place: Beside) -> Seam | None:
    """Bones that go into the channels which other places stitch, and which hold none of their own.

    Of several channels those count that are called after the same: `side bones` go into `side
    bone channels`. Bones with a name of their own between two plies lie in a channel of those.
    """
    if place.seam.place != CHANNELS or not place.holds(BONE):
        return None
    empty = [o for o in place.others if o.place == CHANNELS and not _boned(o, place)]
    parts = [o for o in empty if not (o.part and place.seam.part) or o.part == place.seam.part]
    hosts = [o for o in parts if set(o.cloths()) & set(place.cloths)]
    called = [o for o in hosts if set(place.words[:-1]) & set(the_words(o.name)[:-1])]
    hosts = called if place.words[:-1] and called else hosts
    plies = [use for use in place.seam.uses if use.cloth in place.cloths]
    if place.words[:-1] and not called and len(plies) > 1:
        return None
    return belongs_as(place, SLID_IN, BONES, hosts, first=False) if hosts else None


def _boned(seam: Seam, place: Beside) -> bool:
    """Whether a place holds bones itself."""
    return any(place.entries[n].kind == BONE for n in seam.cloths() if n in place.entries)

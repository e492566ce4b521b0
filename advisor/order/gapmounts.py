"""Two cloths that lie together in seam after seam, and no place says how they are held as one."""

from __future__ import annotations

from collections.abc import Mapping, Sequence

from advisor.construction.canvassed import doubled, often_doubled
from advisor.knowledge import nouns
from advisor.knowledge.model import Entry
from advisor.order.kinds import SeamPlace
from advisor.order.layering import BACKING
from advisor.project.headwords import speaks_of


def unmounted(
    place: SeamPlace, places: Sequence[SeamPlace], entries: Mapping[str, Entry]
) -> tuple[str, ...]:
    """The pair of a seam that no place bastes to one, though it lies so in several seams.

    A sheer or a lining that backs another is basted to it without being asked for, and so is a
    cloth that is called a backing; what has a seam of its own hangs free.
    """
    pair = doubled(place.seam, entries)
    if not pair or place.kind.family != "seam":
        return ()
    behind = pair[1]
    called = speaks_of(behind, nouns.BACKS)
    told = any(p.kind.family == "backing" and behind in p.cloths for p in places)
    alone = any(p.cloths == (behind,) for p in places if p.kind.family == "seam")
    often = pair in often_doubled((p.seam for p in places), entries)
    asked = often and not (told or alone or called or entries[behind].family in BACKING)
    return pair if asked else ()

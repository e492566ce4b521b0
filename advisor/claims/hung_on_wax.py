"""A pocket bag that hangs on waxed cloth: the iron that closes it would melt the wax beside it.

Its opening is made first, so that the cloth of the front lies against the bag while that is closed.
A towel keeps an iron off a synthetic; what melts at a touch of warmth is kept from any iron.
"""

from __future__ import annotations

from collections.abc import Iterator
from typing import Final

from advisor.claims.speakers import Said, is_heat_limit
from advisor.knowledge.model import COLD, LIMIT_ASPECT, Claim, Entry, Knowledge
from advisor.project.garment import Garment, Seam
from advisor.project.placing import POCKETS, singular_words

BAG: Final = "bag"
POCKET: Final = "pocket"
MELTS: Final = 60.0
"""What runs at this heat runs under whatever lies against a warm iron, °C."""
WHY: Final = "It hangs on {cloth}, whose wax the iron would melt: press it with the fingers."


def hung_on_wax(seam: Seam, garment: Garment, knowledge: Knowledge) -> Iterator[Said]:
    """What the waxed cloth of a pocket opening says of the iron at its bag."""
    if seam.place not in POCKETS or BAG not in singular_words(seam.name):
        return
    own = set(seam.cloths())
    openings = (s for s in garment.seams if s is not seam and POCKET in singular_words(s.name))
    fronts = (n for s in openings if own & set(s.cloths()) for n in s.cloths() if n not in own)
    entries = knowledge.entries
    waxed = next((n for n in fronts if _melts(entries[garment.cloths[n].entry])), None)
    if waxed is not None and LIMIT_ASPECT in knowledge.aspects:
        about = (LIMIT_ASPECT, (COLD, COLD), 0, None, "must", "damage", WHY.format(cloth=waxed))
        yield Said(waxed, Claim(*about, ("common-practice",), 0, "this garment"))


def _melts(entry: Entry) -> bool:
    lids = (c.span[1] for c in entry.claims if is_heat_limit(c) and c.strength == "must" and c.span)
    return entry.kind == "cloth" and min(lids, default=MELTS + 1) <= MELTS

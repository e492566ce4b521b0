"""A hem whose second cloth only binds its edge: it is made as a bound hem, as its shell asks."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Final

from advisor.claims.speakers import Said
from advisor.knowledge.model import Claim, Knowledge
from advisor.project.garment import Garment, Seam
from advisor.project.hemstrips import hem_strip

HEM: Final = "hem.kind"
BOUND: Final = "bound"
OF_THE_SHELL: Final = frozenset({HEM, "stitch.length", "stitch.tension", "machine.pressure"})
"""What the strip of a bound hem has no say in."""


def bound_hem_says(seam: Seam, garment: Garment, knowledge: Knowledge) -> Iterator[Said]:
    """What the strip of a hem says of how that is made."""
    entries = {n: knowledge.entries[cloth.entry] for n, cloth in garment.cloths.items()}
    strip = hem_strip(seam, garment, entries)
    if strip and HEM in knowledge.aspects:
        mask = 1 << knowledge.aspects[HEM].words.index(BOUND)
        why = f"{strip} lies in it to bind its cut edge."
        about = (HEM, None, mask, None, "should", "result", why, ("common-practice",))
        yield Said(strip, Claim(*about, 0, "this garment", ends=("seam", "seam")))

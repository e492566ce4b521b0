"""What needle a stack asks for: claims on `needle.size` that meet those of the cloths.

A fine needle bends in a thick, dense stack, strikes the plate and breaks. No published table of
needle by thickness of the stack was found: the steps are ours (`estimate`). They begin above what
two plies of a coating come to (about 1.3 mm); below that the cloths speak for themselves.
"""

from __future__ import annotations

from typing import Final

from advisor.claims.collect import Gathered, Place
from advisor.claims.combine import Verdict, decide
from advisor.claims.speakers import Said
from advisor.construction.bulk import kinds_of, thickest
from advisor.construction.stack import Spot, spots_of
from advisor.knowledge.model import Claim, Knowledge
from advisor.project.garment import Garment

NEEDLE: Final = "needle.size"
BREAKS_MM: Final = 2.5
"""From here on under the foot the stack is heard before the cloths, mm: estimate, for safety."""
FIRST, LAST = 0, 3
FINER: Final = 10.0
STEPS: Final = ((4.0, 100.0, 80.0), (2.5, 90.0, 70.0), (1.8, 80.0, 0.0))
"""From mm under the foot: the size (NM) that suits, and the finest that goes through at all."""


def add_needles(
    garment: Garment,
    gathered: Gathered,
    verdicts: dict[Place, dict[str, Verdict]],
    knowledge: Knowledge,
) -> None:
    """Let the stack speak of the needle in every machine-sewn seam that is thick, and decide."""
    aspect = knowledge.aspects.get(NEEDLE)
    if aspect is None:
        return
    kinds = kinds_of(garment, verdicts)
    for seam in garment.seams:
        place = Place("seam", seam.name)
        if seam.by_hand or NEEDLE not in verdicts[place]:
            continue
        spot = thickest(spots_of(seam, garment, knowledge, kinds))
        claims = needle_claims(spot, aspect.high) if spot else []
        if claims:
            about = frozenset(seam.cloths())
            said = [Said(seam.name, claim, (), True, about) for claim in claims]
            gathered.said[place][NEEDLE] = [*gathered.said[place][NEEDLE], *said]
            verdicts[place][NEEDLE] = decide(aspect, gathered.said[place][NEEDLE])


def needle_claims(spot: Spot, top: float) -> list[Claim]:
    """What a place of a seam asks of the needle, the size that suits and the finest."""
    suits, finest = needed_needle(spot.foot_mm)
    why = f"{spot.plies:.3g} plies meet {spot.name}: a fine needle bends there and may break."
    found = []
    if suits and spot.foot_mm < BREAKS_MM:
        found = [_claim(suits, top, why, "should", LAST)]
    elif suits:
        # A finer needle that breaks flies at the face, so here the stack is heard first; where a
        # tender layer rules the size out, one size finer is still better than none of it.
        found = [_claim(size, top, why, "should", FIRST) for size in (suits, suits - FINER)]
    return [*found, _claim(finest, top, why, "must", LAST)] if finest else found


def _claim(least: float, top: float, why: str, strength: str, rank: int) -> Claim:
    risk = "result" if strength == "must" else ""
    ends = ("seam", "seam") if rank == FIRST else None
    return Claim(
        *(NEEDLE, (least, top), 0, None, strength, risk, why),
        *(("estimate",), rank, "bulk"),
        ends=ends,
    )


def needed_needle(foot_mm: float) -> tuple[float, float]:
    """The size that suits a stack so thick under the foot and the finest that can; 0 for any."""
    for least, suits, finest in STEPS:
        if foot_mm >= least:
            return suits, finest
    return 0.0, 0.0

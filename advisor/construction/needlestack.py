"""What needle a stack asks for: claims on `needle.size` that meet those of the cloths.

A fine needle bends in a thick, dense stack, strikes the plate and breaks. No published table of
needle by thickness of the stack was found: the steps are ours (`estimate`). They begin above what
two plies of a coating come to (about 1.3 mm); below that the cloths speak for themselves.
What the whole seam is sewn with goes by what lies along all of it: over one crossing the hand
turns the wheel, or a larger needle is put in for that alone, so that the rest of the seam is at
most one size finer than such a hump wants.
"""

from __future__ import annotations

from collections import Counter
from typing import Final

from msgspec.structs import replace

from advisor.claims.collect import Gathered, Place
from advisor.claims.combine import Verdict, decide
from advisor.claims.speakers import Said
from advisor.claims.valuesets import Span
from advisor.construction.bulk import kinds_of, number, thickest
from advisor.construction.stack import (
    FOLDED_SEAMS,
    ON_A_PLEAT,
    STITCH_LINE,
    Spot,
    counted,
    spots_of,
)
from advisor.knowledge.model import Claim, Knowledge
from advisor.project.garment import Garment, Seam

NEEDLE: Final = "needle.size"
JOINED: Final = frozenset({"seam", "gathers", "band"})
"""Families of places that are sewn through all of their layers."""
DERIVED: Final = ("derived",)
BREAKS_MM: Final = 2.5
"""From here on under the foot the stack is heard before the cloths, mm: estimate, for safety."""
FIRST, LAST = 0, 3
FINER: Final = 10.0
STEPS: Final = ((4.0, 100.0, 80.0), (2.5, 90.0, 70.0), (1.8, 80.0, 0.0))
"""From mm under the foot: the size (NM) that suits, and the finest that goes through at all."""
ALONG: Final = frozenset({STITCH_LINE, ON_A_PLEAT, *FOLDED_SEAMS.values()})
"""What a seam is sewn through from end to end, or again and again."""


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
        claims = needle_claims(spots_of(seam, garment, knowledge, kinds), aspect.high)
        if claims:
            about = frozenset(seam.cloths())
            said = [Said(seam.name, claim, (), True, about) for claim in claims]
            gathered.said[place][NEEDLE] = [*gathered.said[place][NEEDLE], *said]
            verdicts[place][NEEDLE] = decide(aspect, gathered.said[place][NEEDLE])


def never_finer(
    garment: Garment,
    gathered: Gathered,
    verdicts: dict[Place, dict[str, Verdict]],
    knowledge: Knowledge,
) -> None:
    """Let no seam of more plies be sewn with a finer needle than one of fewer of the same cloths.

    Only where what suits all of its layers holds that size: none of them gives way to it.
    """
    aspect = knowledge.aspects.get(NEEDLE)
    kinds = knowledge.places.kinds
    sewn = {id_ for id_, kind in kinds.items() if kind.family in JOINED}
    seams = [s for s in garment.seams if not s.by_hand and s.place in sewn]
    plies = {s.name: _plies(s, garment, knowledge) for s in seams}
    for seam in sorted(seams, key=lambda s: (plies[s.name].total(), s.name)):
        place = Place("seam", seam.name)
        verdict = verdicts[place].get(NEEDLE)
        if aspect is None or verdict is None or verdict.pick is None:
            continue
        thinner = [s for s in seams if plies[s.name] < plies[seam.name]]
        picks = {s.name: number(verdicts[Place("seam", s.name)], NEEDLE) for s in thinner}
        larger = {name: n for name, n in picks.items() if n and n > verdict.pick}
        fits = {
            name: n
            for name, n in larger.items()
            if isinstance(verdict.advised, Span) and n in verdict.advised
        }
        if fits:
            name = max(fits, key=lambda found: (fits[found], found))
            why = f"As in {name}: more plies of the same cloths take no finer needle."
            claim = replace(_claim(fits[name], aspect.high, why, "should", LAST), sources=DERIVED)
            said = Said(seam.name, claim, (), True, frozenset(seam.cloths()))
            gathered.said[place][NEEDLE] = [*gathered.said[place][NEEDLE], said]
            verdicts[place][NEEDLE] = decide(aspect, gathered.said[place][NEEDLE])


def _plies(seam: Seam, garment: Garment, knowledge: Knowledge) -> Counter[str]:
    """How often each cloth lies in a seam; its notions are sewn beside or within."""
    uses = (use.cloth for use in seam.uses)
    entries = knowledge.entries
    return Counter(n for n in uses if entries[garment.cloths[n].entry].kind == "cloth")


def needle_claims(spots: list[Spot], top: float) -> list[Claim]:
    """What a seam asks of the needle: the size that suits all of it, the finest for its worst."""
    line, worst = thickest([spot for spot in spots if spot.name in ALONG]), thickest(spots)
    suits = needed_needle(line.foot_mm)[0] if line else 0.0
    found = []
    if line and suits and line.foot_mm < BREAKS_MM:
        found = [_claim(suits, top, _why(line), "should", LAST)]
    elif line and suits:
        # A finer needle that breaks flies at the face, so here the stack is heard first; where a
        # tender layer rules the size out, one size finer is still better than none of it.
        found = [_claim(size, top, _why(line), "should", FIRST) for size in (suits, suits - FINER)]
    wanted, finest = needed_needle(worst.foot_mm) if worst else (0.0, 0.0)
    if worst and worst is not line and worst.foot_mm >= BREAKS_MM:
        found.append(_claim(wanted - FINER, top, _why(worst), "should", FIRST))
    return [*found, _claim(finest, top, _why(worst), "must", LAST)] if worst and finest else found


def _why(spot: Spot) -> str:
    return f"{counted(spot.plies)} meet {spot.name}: a fine needle bends there and may break."


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

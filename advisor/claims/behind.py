"""A backing that a seam does not name may reach part of the way: the iron of each stretch is told.

The seam keeps to the gentler iron over its whole length, for nobody says how far the backing goes.
"""

from __future__ import annotations

from collections.abc import Mapping

from advisor.claims.collect import Place
from advisor.claims.combine import Verdict, decide
from advisor.claims.mounted import backings
from advisor.claims.valuesets import Span
from advisor.claims.workarounds import Instruction
from advisor.craft.irondial import mark_for
from advisor.knowledge.model import COLD, LIMIT_ASPECT
from advisor.project.garment import Garment, Seam

BEHIND = "behind"
"""An instruction for a seam of which a stretch may have no backing."""
Key = tuple[frozenset[str], frozenset[str], float, float]


def partly_backed(
    garment: Garment, verdicts: Mapping[Place, Mapping[str, Verdict]]
) -> tuple[Instruction, ...]:
    """One instruction for each face and backing, with what the face bears where it is single."""
    found: dict[Key, list[Place]] = {}
    for seam in garment.seams:
        place, behind = Place("seam", seam.name), frozenset(backings(seam, garment))
        heat = verdicts.get(place, {}).get(LIMIT_ASPECT)
        if heat is None or not behind or seam.cold:
            continue
        most, alone = _high(heat), _high(_single(heat, behind))
        if mark_for(most) != mark_for(alone) and alone > most:
            found.setdefault((_faces(seam, garment, behind), behind, most, alone), []).append(place)
    return tuple(
        Instruction(BEHIND, faces, behind, tuple(places), most, alone)
        for (faces, behind, most, alone), places in found.items()
    )


def _single(heat: Verdict, behind: frozenset[str]) -> Verdict:
    """What is decided of the iron without the word of those that lie behind."""
    every = (*heat.because, *heat.given_up, *heat.clash)
    left = [said for said in every if not (said.cloths and said.cloths <= behind)]
    return decide(heat.aspect, left, together=True)


def _faces(seam: Seam, garment: Garment, behind: frozenset[str]) -> frozenset[str]:
    """The cloths of a seam that those are basted to."""
    mounts = (other.cloths() for other in garment.seams if behind & set(other.cloths()[1:]))
    return frozenset(names[0] for names in mounts) & frozenset(seam.cloths())


def _high(heat: Verdict) -> float:
    return heat.allowed.high if isinstance(heat.allowed, Span) else COLD

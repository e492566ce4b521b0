"""The edges of one cloth are finished alike in one garment, where nothing speaks against it.

A seam that a lining covers is best pinked; where another seam of the same cloth has to be
overlocked, so is this one, if overlocking is advised there as well.
"""

from __future__ import annotations

from collections.abc import Mapping
from typing import Final

from advisor.claims.collect import Place
from advisor.claims.combine import Verdict, narrowed
from advisor.claims.valuesets import Choice
from advisor.knowledge.model import Entry
from advisor.project.garment import Garment

FINISH: Final = "seam.finish"
OVERLOCKED, PINKED = "overlocked", "pinked"


def finish_alike(
    garment: Garment, verdicts: dict[Place, dict[str, Verdict]], entries: Mapping[str, Entry]
) -> None:
    """Overlock what is pinked beside an overlocked seam of the same cloths, zip or no zip."""
    found: dict[tuple[frozenset[str], str], list[str]] = {}
    for seam in garment.seams:
        word = _word(verdicts[Place("seam", seam.name)].get(FINISH))
        own = (n for n in seam.cloths() if entries[garment.cloths[n].entry].kind == "cloth")
        found.setdefault((frozenset(own), word), []).append(seam.name)
    for (cloths, word), names in found.items():
        beside = found.get((cloths, OVERLOCKED))
        if word != PINKED or not beside:
            continue
        why = (
            f"{beside[0][:1].upper()}{beside[0][1:]} is overlocked, and so is what is of its cloth."
        )
        for name in names:
            by_aspect = verdicts[Place("seam", name)]
            by_aspect[FINISH] = _overlocked(by_aspect[FINISH], why)


def _overlocked(verdict: Verdict, why: str) -> Verdict:
    """The verdict with an overlocked edge picked, where that is advised."""
    option = verdict.aspect.words.index(OVERLOCKED)
    advised = isinstance(verdict.advised, Choice) and option in verdict.advised.options()
    return narrowed(verdict, [OVERLOCKED], why) if advised else verdict


def _word(verdict: Verdict | None) -> str:
    return (
        "" if verdict is None or verdict.pick is None else verdict.aspect.words[int(verdict.pick)]
    )

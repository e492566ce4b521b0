"""Where the pattern of a cloth has to meet, and how it is held there: told once for each cloth."""

from __future__ import annotations

from typing import TYPE_CHECKING, Final

from advisor.answer.core import FIRST
from advisor.answer.model.told import ToldTask
from advisor.claims.linedup import matched_at
from advisor.units import show

if TYPE_CHECKING:
    from advisor.answer.teller import Teller
    from advisor.project.garment import Garment

HOW: Final = (
    "Match {cloth} line on line at {seams}, on the seam line, not at the edge: pin each line."
)
LENGTH: Final = (
    " Its repeat of {repeat} is reckoned along the length: leave repeat: out where stripes run so."
)


def matching(garment: Garment, teller: Teller) -> tuple[ToldTask, ...]:
    """What is told of each cloth with matched pieces."""
    found = []
    for cloth in sorted({p.cloth for p in garment.plan.pieces if p.matched}):
        seams = matched_at(garment, cloth)
        bolt = garment.plan.bolts.get(cloth)
        if not seams:
            continue
        text = HOW.format(cloth=cloth, seams=_listed(seams))
        if bolt is not None and bolt.repeat:
            text += LENGTH.format(repeat=show("length", bolt.repeat, teller.units))
        sources = teller.cite(("plaids-trade-body", "uky-ct-mmb-018"))
        found.append(
            ToldTask(garment.name, "garment", text, "", certain=True, weight=FIRST, sources=sources)
        )
    return tuple(found)


def _listed(names: tuple[str, ...]) -> str:
    return names[0] if len(names) == 1 else f"{', '.join(names[:-1])} and {names[-1]}"

"""A question of several layers with its glue fused before they meet, as everybody works.

Who asks of a wool, a fusible and a lining names what the garment is of; a flat piece is fused
before anything is joined to it (common practice). Of one cloth and a glue the seam that is asked
about is the fusing itself.
"""

from __future__ import annotations

from dataclasses import replace
from typing import TYPE_CHECKING, Final

if TYPE_CHECKING:
    from collections.abc import Mapping

    from advisor.knowledge.model import Knowledge
    from advisor.project.garment import Garment, Seam

GLUES: Final = frozenset({"fusible", "low-temperature fusible"})
FEWEST: Final = 2
"""So many layers besides the glue make a seam in which it need not be hot."""


def fusing_first(garment: Garment, knowledge: Knowledge) -> Garment:
    """The garment with the glues of each such seam pressed before it.

    A glue that is named at the end lies on whichever of the first two cloths takes it.
    """
    kinds = {name: knowledge.entries[c.entry].kind for name, c in garment.cloths.items()}
    return replace(garment, seams=tuple(_first(seam, kinds) for seam in garment.seams))


def _first(seam: Seam, kinds: Mapping[str, str]) -> Seam:
    glues = frozenset(name for name in seam.cloths() if kinds[name] in GLUES)
    if not glues or len({n for n in seam.cloths() if kinds[n] == "cloth"}) < FEWEST:
        return seam
    uses = list(seam.uses)
    for end in (0, -1):
        if uses[end].cloth in glues:
            uses.insert(1, uses.pop(end))
    return replace(seam, uses=tuple(uses), apart=seam.apart | glues)

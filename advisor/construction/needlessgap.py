"""A gap to turn a garment through where the lining hangs open below, so that nobody needs it."""

from __future__ import annotations

from collections.abc import Iterator

from advisor.construction.disagreement import Disagreement
from advisor.knowledge import nouns
from advisor.knowledge.model import Knowledge
from advisor.project.garment import Garment
from advisor.project.headwords import speaks_of
from advisor.project.linings import unit_of

HEM = "hem"


def needless_gap(garment: Garment, knowledge: Knowledge) -> Iterator[Disagreement]:
    """Each opening that is left in a lining whose lower edge is hemmed by itself and hangs free."""
    entries = {name: knowledge.entries[cloth.entry] for name, cloth in garment.cloths.items()}
    units = {seam.name: unit_of(seam, entries) for seam in garment.seams}
    free = [
        seam.name
        for seam in garment.seams
        if seam.place == HEM
        and units[seam.name] == "lining"
        and not speaks_of(seam.name, nouns.OFF_THE_BODY)
    ]
    for seam in garment.seams:
        if free and seam.making.left_open and units[seam.name] != "shell":
            text = (
                f"is left open to turn through, but {free[0]} hangs free, and the garment is "
                "turned there: take 'left open' out, or join the lining to the hem of the shell"
            )
            yield Disagreement("needless gap", seam.name, (), text)

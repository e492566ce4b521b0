"""A gap to turn a garment through where the lining hangs open below, so that nobody needs it."""

from __future__ import annotations

from collections.abc import Iterator

from msgspec.structs import replace

from advisor.claims.judgement import Judgement
from advisor.construction.disagreement import Disagreement
from advisor.knowledge import nouns
from advisor.knowledge.model import Knowledge
from advisor.project.garment import Garment, Seam
from advisor.project.headwords import speaks_of
from advisor.project.linings import unit_of

HEM = "hem"


def needless_gap(garment: Garment, knowledge: Knowledge) -> Iterator[Disagreement]:
    """Each opening that is left in a lining whose lower edge is hemmed by itself and hangs free."""
    gaps, free = _gaps(garment, knowledge)
    for name in gaps:
        text = (
            f"is left open to turn through, but {free} hangs free, and the garment is "
            "turned there: take 'left open' out, or join the lining to the hem of the shell"
        )
        yield Disagreement("needless gap", name, (), text)


def without_needless_gaps(garment: Garment, knowledge: Knowledge) -> Garment:
    """The garment as it is made: no such opening is left, turned through or closed."""
    gaps, _ = _gaps(garment, knowledge)
    return replace(garment, seams=tuple(_shut(s) if s.name in gaps else s for s in garment.seams))


def made_of(judgement: Judgement, knowledge: Knowledge) -> Judgement:
    """What was judged, with such openings shut."""
    return replace(judgement, garment=without_needless_gaps(judgement.garment, knowledge))


def _shut(seam: Seam) -> Seam:
    return replace(seam, making=replace(seam.making, left_open=0.0))


def _gaps(garment: Garment, knowledge: Knowledge) -> tuple[tuple[str, ...], str]:
    """The seams with such an opening, and the first hem of the lining that hangs free."""
    entries = {name: knowledge.entries[cloth.entry] for name, cloth in garment.cloths.items()}
    units = {seam.name: unit_of(seam, entries) for seam in garment.seams}
    hems = (s for s in garment.seams if s.place == HEM and units[s.name] == "lining")
    free = next((s.name for s in hems if not speaks_of(s.name, nouns.OFF_THE_BODY)), "")
    open_ = (s.name for s in garment.seams if s.making.left_open and units[s.name] != "shell")
    return (tuple(open_) if free else (), free)

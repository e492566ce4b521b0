"""What a garment file seems to have forgotten, in words, each with the line that says it."""

from __future__ import annotations

from msgspec.structs import replace

from advisor.answer.model.told import ToldGap
from advisor.answer.teller import Teller
from advisor.order.missing import LINING, Gap, missing
from advisor.project.newplace import new_place


def told_gaps(teller: Teller) -> tuple[ToldGap, ...]:
    """Everything that seems to be missing, the gravest first."""
    return tuple(_told(gap, teller) for gap in missing(teller.garment, teller.knowledge))


def _told(gap: Gap, teller: Teller) -> ToldGap:
    rule, place = gap.rule, gap.place
    first = LINING if place.unit == LINING and LINING not in (rule.write or place).name else ""
    names = {seam.name for seam in teller.garment.seams}
    part = place.seam.part
    wanted = rule.write and replace(rule.write, name=rule.write.name.format(place=place.name))
    line = new_place(wanted, gap.cloths, part, first, names) if wanted else ""
    sources = teller.cite(rule.sources)
    return ToldGap(rule.id, place.name, _says(gap), line, sources)


def _says(gap: Gap) -> str:
    """The sentence of a gap with its place and its cloths."""
    cloths = " and ".join(gap.cloths)
    return gap.rule.says.replace("{at}", gap.place.name).replace("{cloth}", cloths)

"""Which skirt is hemmed before it is pleated: a straight one, pleated all round, of a sure length.

Hemmed afterwards, each fold of the hem has to be worked open and pressed in anew; the length is
then taken at the waist (`clothing-text-1916` and common practice have the hem of straight widths
first). Where nobody says that the pattern has been tried, the hem waits.
"""

from __future__ import annotations

from collections.abc import Iterable
from typing import Final

from advisor.knowledge import nouns
from advisor.project.folded import PLEAT
from advisor.project.garment import Garment, Seam
from advisor.project.headwords import speaks_of
from advisor.project.placing import singular_words

TRIED: Final = "tried"
ALL_ROUND: Final = 4
"""From how many pleats on a skirt is pleated all round: estimate."""
LONG_MM: Final = 250.0
"""From this length on pleats that name no skirt run down one, mm: estimate."""


def hemmed_before_pleats(hem: Seam, garment: Garment) -> bool:
    """Whether the flat widths of a skirt are hemmed before their pleats are laid."""
    straight = hem.facts.get("shape", "straight") == "straight" and hem.facts.get("bias") != "yes"
    legs = any(speaks_of(seam.name, nouns.LEGS) for seam in garment.seams)
    sure = garment.pattern == TRIED and straight and not legs
    return sure and pleated_all_round(hem, garment.seams)


def pleated_all_round(hem: Seam, seams: Iterable[Seam]) -> bool:
    """Whether pleats run down to a hem from all of its cloth."""
    cloths = set(hem.cloths())
    return any(
        pleats_run_down(other) and cloths <= set(other.cloths()) and other.part in ("", hem.part)
        for other in seams
        if other is not hem
    )


def pleats_run_down(seam: Seam) -> bool:
    """Whether it is a row of pleats round a skirt, whose folds run down to its edge."""
    words, laid = set(singular_words(f"{seam.name} {seam.part}")), seam.making.pleats
    number = laid.number if laid is not None else seam.making.times
    pleats = laid is not None or (seam.place == PLEAT and PLEAT in words)
    long = seam.place == PLEAT and seam.long_mm >= LONG_MM
    down = (
        long or bool(nouns.SKIRTS & words) or (seam.place != PLEAT and bool(nouns.WAISTS & words))
    )
    return pleats and number >= ALL_ROUND and down and not nouns.NO_SKIRT & words


def taken_in_to_the_waist(seam: Seam) -> bool:
    """Whether its pleats take up more at the waist than at the hip, so that they shape a skirt."""
    laid = seam.making.pleats
    return laid is not None and bool(laid.hip and laid.waist and laid.hip > laid.waist)

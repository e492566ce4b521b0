"""The lower edge of a lining that ends with its bodice: felled at the waist, and hung at no hem."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from typing import TYPE_CHECKING, Final

from msgspec.structs import replace

from advisor.knowledge import nouns
from advisor.project.placing import singular_words
from advisor.units import System, show

if TYPE_CHECKING:
    from advisor.knowledge.ordering import SeamKind
    from advisor.order.kinds import SeamPlace

EDGE: Final = "bodice-lining-edge"
AT_WAIST: Final = "felled at the waist"
WAIST, HEM, LINING, SHELL, SEAM = "waist", "hem", "lining", "shell", "seam"
STAY, FELL_HEM = "waist-stay-tacked", "fell-hem"
PAST_STAY_MM: Final = 30.0
"""How far beside the opening a lining is left loose, so that a stay is hooked, mm: estimate."""
PAST_STAY: Final = (
    ", but for {gap} beside the opening, where the ends of {stay} come out to be hooked"
)
BODICE_MM: Final = 550.0
"""The seams of a bodice are shorter than this, from the neck or the armhole down, mm: estimate."""


def with_linings_felled(
    places: tuple[SeamPlace, ...], roles: Mapping[str, SeamKind]
) -> tuple[SeamPlace, ...]:
    """The places, the lower edge of the lining of a bodice among them as what it is."""
    role = roles.get(EDGE)
    if role is None:
        return places
    return tuple(replace(p, role=role) if ends_a_bodice(p, places) else p for p in places)


def ends_a_bodice(hem: SeamPlace, places: Sequence[SeamPlace]) -> bool:
    """Whether it finishes a lining of which no seam reaches below a waist of the shell."""
    if hem.role.id != HEM or hem.kind.id != HEM or hem.unit != LINING:
        return False
    waist = any(p.role.id == WAIST and p.unit == SHELL for p in places)
    own = [p for p in places if _of_its_lining(p, hem)]
    long = any(p.seam.long_mm > BODICE_MM for p in own)
    low = any(nouns.BELOW_A_BODICE & _called(p) for p in (hem, *own))
    return waist and bool(own) and not long and not low


def past_stay(op: str, place: SeamPlace, places: Sequence[SeamPlace], units: System) -> str:
    """What is left open of a lining that is felled at the waist, for a stay with ends to hook."""
    stays = [p.name for p in places if p.method.id == STAY]
    here = op == FELL_HEM or WAIST in singular_words(place.name)
    gap = show("length", PAST_STAY_MM, units)
    return PAST_STAY.format(gap=gap, stay=stays[0]) if stays and here else ""


def _of_its_lining(place: SeamPlace, hem: SeamPlace) -> bool:
    seam = place.unit == LINING and place.kind.family == SEAM
    parts = {place.seam.part, hem.seam.part} - {""}
    return seam and len(parts) < 2 and bool(set(place.cloths) & set(hem.cloths))


def _called(place: SeamPlace) -> set[str]:
    return {*singular_words(place.name), *singular_words(place.seam.part)}

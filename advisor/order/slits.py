"""Slits that are cut into a piece, and linings that are felled in by hand, also round a slit."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Sequence
from typing import TYPE_CHECKING, Final

from advisor.knowledge import nouns
from advisor.order.kinds import SeamPlace
from advisor.project.placing import singular_words
from advisor.project.seamends import ends_a_seam

if TYPE_CHECKING:
    from advisor.order.facts import Facts

KEYHOLE, SLIT = "keyhole", "slit"
LININGS_SEAM: Final = "lining-seam"
NOT_CUT: Final = frozenset({"seam-slit", "vent", "seam-gap", "fall"})
"""Roles of slits at the end of a seam or in it, where nothing is cut into a piece."""

PLACKET: Final = "placket"
BAND: Final = "waistband"
SEAM: Final = "seam"
RUNS_UP: Final = frozenset({"plain", "panel", "side", "centre"})
"""Roles of a seam that runs up into a waistband."""
BELOW_MM: Final = 100.0
"""How far a seam goes on at least below an opening in it, mm: estimate."""


def answers(place: SeamPlace, facts: Facts) -> dict[str, Callable[[], bool]]:
    """The facts of a place that are told here."""
    return {
        "open end of a seam": lambda: ends_a_seam(place.seam, facts.garment.seams),
        "slit that is faced": lambda: _faced(place),
        "lines a cut slit": lambda: bool(slits_lined(place, facts)),
    }


def _cut(place: SeamPlace) -> bool:
    """Whether a slit is cut there, by its name and by what it is in the garment."""
    called = {KEYHOLE, SLIT} & set(singular_words(place.name))
    return bool(called) and place.role.id not in NOT_CUT


def _faced(place: SeamPlace) -> bool:
    """Whether a facing finishes a slit: the edge that is turned has to be slashed first."""
    turned = place.said("edge") == "turned" and place.kind.id != LININGS_SEAM
    return KEYHOLE in singular_words(place.name) or (turned and _cut(place))


def slits_lined(place: SeamPlace, facts: Facts) -> list[SeamPlace]:
    """The slits in a piece of the shell that the lining of this place is felled round."""
    if place.kind.id != LININGS_SEAM or SLIT not in singular_words(place.name):
        return []
    near = (p for p in facts.places if p.kind.id != LININGS_SEAM and p.unit != "lining")
    return [p for p in near if _cut(p) and set(p.cloths) & set(place.cloths)]


def seam_instead(place: SeamPlace, places: Iterable[SeamPlace]) -> str:
    """Which seam could stay open where a slit is cut for a waistband; "" where none runs up there.

    Of a skirt in gathers any seam will do, for its fullness hides where the opening lies.
    """
    words = set(singular_words(place.name))
    if place.kind.id != PLACKET or words & nouns.OFF_A_PANEL or place.role.id in NOT_CUT:
        return ""
    near = [p for p in places if p.seam.part == place.seam.part and set(p.cloths) & {*place.cloths}]
    if not any(p.kind.id == BAND and p.full for p in near):
        return ""
    runs = (p for p in near if p.kind.id == SEAM and p.role.id in RUNS_UP and len(p.cloths) == 1)
    long = [p for p in runs if p.seam.long_mm >= place.seam.long_mm + BELOW_MM]
    return long[0].name if long else ""


def short_of_its_opening(seam: SeamPlace, places: Sequence[SeamPlace]) -> str:
    """That a seam is sewn only to the mark where it opens; "" where it opens nowhere."""
    openings = [p for p in places if ends_a_seam(p.seam, [seam.seam])]
    return f", as far as the mark where {openings[0].name} begins" if openings else ""

"""What of a notion is bought: pieces of a cut length, a length, or a number.

A zip, a button and a pad are bought by the piece, elastic, tape and boning by the length: as long
as its place, less what it is stretched by, and what its ends take besides, which its file says.
Interfacing and wadding are cut to pieces like a cloth. Two times of the place that sets a front
zip are the two sides of one zip (`common-practice`).
"""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass
from typing import Final

from advisor.craft import boning
from advisor.knowledge.model import Entry, Knowledge
from advisor.project.garment import Cloth, Garment, Seam

BY_PIECE: Final = frozenset({"zip", "button"})
BY_LENGTH: Final = frozenset({"elastic", "tape", "hook-and-loop", "trim", "bone"})
ROWS: Final = frozenset({"hook-and-eye", "snap", "set-snap"})
"""Fastenings of which one place may hold a row, so that its times do not tell their number."""
CONCEALED: Final = "concealed-zip"
CONCEALED_TAIL: Final = 30.0
"""What a concealed zip is longer than its opening, mm: the slider stays below the end of the row
(common practice says 3 to 5 cm)."""
BONE: Final = "bone"
GATHERING: Final = "braided-elastic"
"""What draws an edge up where no elastic is named: its ends are taken as this one's."""
SPIRALS: Final = frozenset({"spiral-boning"})
METAL, STEEL, PLASTIC = "metal", "steel", "plastic"
ONE_FRONT: Final = ("front", "centre", "center")
"""In the name of a place: the garment has one of it, with two sides."""


@dataclass(frozen=True, slots=True)
class Lengths:
    """So many of a length, mm; the length is None where it is not said."""

    number: int
    each: float | None


@dataclass(frozen=True, slots=True)
class NotionBought:
    """A notion to buy.

    Attributes:
        number: how many, where it is sold by the piece; None where nobody said.
        cut: how long each is bought, or lies finished, longest first.
        whole: all lengths together, mm; None where it is sold by the piece, or one is not said.
        ends: what each of those lengths takes besides for its ends, mm.
        least: of what is cut to pieces like a cloth, the longest place that it lies in, mm.
        bends: of a bone, each material, its usual thickness and the least radius it takes, mm.
    """

    name: str
    places: tuple[str, ...]
    number: int | None
    cut: tuple[Lengths, ...]
    whole: float | None
    ends: float = 0.0
    least: float | None = None
    bends: tuple[tuple[str, float, float], ...] = ()

    @property
    def bought(self) -> float | None:
        """All lengths with their ends, mm."""
        return with_ends(self.whole, self.cut, self.ends)


def with_ends(whole: float | None, cut: tuple[Lengths, ...], ends: float) -> float | None:
    """So many lengths together, mm, each with its ends; None where one is not said."""
    return None if whole is None else whole + ends * sum(each.number for each in cut)


def notions_to_buy(garment: Garment, knowledge: Knowledge) -> list[NotionBought]:
    """Every notion that lies in a place, in the order of the project."""
    found = []
    for name, cloth in garment.cloths.items():
        places = [seam for seam in garment.seams if name in seam.cloths()]
        if places and knowledge.entries[cloth.entry].kind != "cloth":
            found.append(_bought(name, places, garment, knowledge))
    return found


def _bought(name: str, places: list[Seam], garment: Garment, knowledge: Knowledge) -> NotionBought:
    entry = knowledge.entries[garment.cloths[name].entry]
    names = tuple(seam.name for seam in places)
    if _by_piece(entry):
        zips = entry.kind == "zip"
        counted = [_number(seam, zips=zips) for seam in places]
        rows = entry.id in ROWS and any(
            "length" in seam.facts and seam.making.times == 1 for seam in places
        )
        cut = tuple(
            Lengths(number, _of_zip(entry, _length(seam, name)))
            for seam, number in zip(places, counted, strict=True)
            if zips
        )
        return NotionBought(name, names, None if rows else sum(counted), cut, None)
    if not _by_length(entry):
        longest = max((float(seam.facts.get("length") or 0.0) for seam in places), default=0.0)
        cut = () if longest else (Lengths(1, None),)
        return NotionBought(name, names, None, cut, None, least=longest or None)
    ends = ends_of(entry)
    bone = entry.kind == BONE and not ends
    cut, whole = lengths_of((seam.making.times, _length(seam, name, bone=bone)) for seam in places)
    bends = _bends(garment.cloths[name]) if entry.kind == BONE else ()
    return NotionBought(name, names, None, cut, whole, ends, bends=bends)


def lengths_of(
    every: Iterable[tuple[int, float | None]],
) -> tuple[tuple[Lengths, ...], float | None]:
    """Lengths, mm, longest first, and all together; None where one of them is not said."""
    found = sorted((Lengths(*each) for each in every), key=lambda each: -(each.each or 0.0))
    known = [each.number * each.each for each in found if each.each is not None]
    return tuple(found), sum(known) if len(known) == len(found) else None


def ends_of(entry: Entry) -> float:
    """What one length of a notion takes for its ends, mm."""
    return float(entry.facts.get("ends", {"mm": 0.0})["mm"])


def _by_length(entry: Entry) -> bool:
    """Whether it is bought by the length: what its file says goes before what its kind says."""
    said = entry.facts.get("sold by")
    return entry.kind in BY_LENGTH if said is None else bool(said == "length")


def _of_zip(entry: Entry, opening: float | None) -> float | None:
    """How long a zip is bought: a concealed one is sewn in from below its slider."""
    tail = CONCEALED_TAIL if entry.id == CONCEALED else 0.0
    return None if opening is None else opening + tail


def _by_piece(entry: Entry) -> bool:
    """Whether it is counted: what its file says goes before what its kind says."""
    said = entry.facts.get("sold by")
    return entry.kind in BY_PIECE if said is None else bool(said == "piece")


def _length(seam: Seam, name: str, *, bone: bool = False) -> float | None:
    """How long it is cut for one time of its place: shorter by what it is stretched.

    A bone is shorter than its channel by what is left free at its ends.
    """
    length = seam.facts.get("length")
    if length is None:
        return None
    stretched = max(use.stretched for use in seam.uses if use.cloth == name)
    net = float(length) / stretched
    return boning.cut_length(net) if bone and net > 2 * boning.FREE_MM else net


def _bends(cloth: Cloth) -> tuple[tuple[str, float, float], ...]:
    """How tightly a bone of the usual thickness bends, of each thing that it may be made of.

    A spiral of flattened wire is no strip: it bends every way, and no strain limits it.
    """
    if cloth.entry in SPIRALS:
        return ()
    made_of = {STEEL if METAL in dict(mix) else PLASTIC for mix in cloth.mixes}
    return tuple(
        (of, boning.USUAL_MM[of], boning.least_radius(boning.USUAL_MM[of], strain))
        for of, strain in boning.STRAIN.items()
        if of in made_of
    )


def _number(seam: Seam, *, zips: bool) -> int:
    times = seam.making.times
    if zips and times == 2 and any(word in seam.name.casefold() for word in ONE_FRONT):
        return 1
    return times


def drawn_by_elastic(garment: Garment, knowledge: Knowledge) -> NotionBought | None:
    """Elastic that draws a full edge up and is named nowhere: as long as the edges it draws to."""
    drawn = [
        seam
        for seam in garment.seams
        if seam.making.gathers is not None and seam.making.gathers.method == "elastic"
    ]
    if not drawn:
        return None
    edges = []
    for seam in drawn:
        assert seam.making.gathers is not None
        edge = seam.making.gathers.to or seam.facts.get("length")
        edges.append((seam.making.times, None if edge is None else float(edge)))
    cut, whole = lengths_of(edges)
    names = tuple(seam.name for seam in drawn)
    ends = ends_of(knowledge.entries[GATHERING])
    return NotionBought("elastic for gathering", names, None, cut, whole, ends)

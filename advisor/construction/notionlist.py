"""What of a notion is bought: pieces of a cut length, a length, or a number.

A zip, a button and a pad are bought by the piece, elastic, tape and boning by the length: as long
as its place, less what it is stretched by, and what its ends take besides, which its file says.
One fastening more is bought to spare than its place takes (`inrows`). Interfacing and wadding are
cut to pieces like a cloth. Two times of the place that sets a front zip are the two sides of one
zip (all `common-practice`).
"""

from __future__ import annotations

import math
from collections.abc import Iterable
from typing import Final

from msgspec import Struct
from msgspec.structs import replace

from advisor.claims.glued import STIFFENS
from advisor.construction.elastics import ELASTIC, from_body, is_tried, told_less
from advisor.construction.fullness import drawn_up_by
from advisor.construction.inrows import apart_of, holes_for, is_row, number_in
from advisor.construction.laced import CORD, cords
from advisor.construction.stays import taped_elsewhere
from advisor.construction.widths import Width, usual_width, width_of
from advisor.craft import boning
from advisor.knowledge.model import Entry, Knowledge
from advisor.knowledge.places import SEWN_ON
from advisor.project.attached import BONES
from advisor.project.buttons import BUTTON, on_a_front
from advisor.project.companions import buys_its_notions
from advisor.project.covering import sets_it
from advisor.project.garment import Cloth, Garment, Seam
from advisor.project.headwords import the_words
from advisor.project.toldtwice import told_at
from advisor.units.factors import MM_PER_INCH

BY_PIECE: Final = frozenset({"zip", "button"})
BY_LENGTH: Final = frozenset({"elastic", "tape", "hook-and-loop", "trim", "bone"})
SPARE: Final = 1
"""Fastenings that are bought besides, for one gets lost."""
LAPPED: Final = frozenset({"elastic-edge", "bound-edge"})
"""Kinds of place at which an elastic is lapped into a ring."""
LAP: Final = 25.0
"""How far the ends of a ring lie on each other at most, mm (common practice)."""
STONES: Final = "stones"
LOST: Final = 0.05
"""The share of stones that is bought besides (common practice)."""
TAPE: Final = "tape"
QUILTING: Final = "quilting"
"""The kind of a place whose length is that of its rows, and which covers all of its cloths."""
ONCE: Final = frozenset({"glue", "thread"})
"""Kinds of which one tube or reel does for every place."""
HOOKED: Final = "hook"
"""The kind of place at which hooks on a tape come in one piece, as long as their place."""
QUARTER: Final = MM_PER_INCH / 4
CONCEALED: Final = "concealed-zip"
CONCEALED_TAIL: Final = 30.0
"""What a concealed zip is longer than its opening, mm: the slider stays below the end of the row
(common practice says 3 to 5 cm)."""
BONE: Final = "bone"
STAY, JOINED = "stay-tape", frozenset({"seam", "gathered-edge"})
GATHERING: Final = "braided-elastic"
"""What draws an edge up where no elastic is named: its ends are taken as this one's."""
SPIRALS: Final = frozenset({"spiral-boning"})
METAL, STEEL, PLASTIC = "metal", "steel", "plastic"


class Lengths(Struct, frozen=True):
    """So many of a length, mm; the length is None where it is not said."""

    number: int
    each: float | None


class NotionBought(Struct, frozen=True):
    """A notion to buy.

    Attributes:
        number: how many, where it is sold by the piece; None where nobody can tell.
        apart: how far apart they are taken to be where that told their number, mm.
        spare: how many are bought besides.
        width: how it is bought, where anybody says.
        tried: whether it is an elastic of which nobody says how far it is stretched, so that the
            body tells how long it is cut; `less` is how much shorter than the body is usual, mm.
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
    apart: float | None = None
    spare: int = 0
    width: Width | None = None
    tried: bool = False
    less: tuple[float, ...] = ()

    @property
    def bought(self) -> float | None:
        """All lengths with their ends, mm."""
        return with_ends(self.whole, self.cut, self.ends)


def with_ends(whole: float | None, cut: tuple[Lengths, ...], ends: float) -> float | None:
    """So many lengths together, mm, each with its ends; None where one is not said."""
    return None if whole is None else whole + ends * sum(each.number for each in cut)


def notions_to_buy(garment: Garment, knowledge: Knowledge) -> list[NotionBought]:
    """Every notion that lies in a place, in the order of the project, each width by itself."""
    found = []
    for name, cloth in garment.cloths.items():
        entry = knowledge.entries[cloth.entry]
        if entry.kind == "cloth":
            continue
        lots: dict[tuple[Width | None, bool, float], list[Seam]] = {}
        holding = [seam for seam in garment.seams if name in seam.cloths()]
        for seam in garment.seams:
            sets = entry.kind != "zip" or sets_it(seam, holding)
            sets = sets and not _only_sewn_to(seam, name, entry, garment)
            sets = sets and not _of_its_channel(seam, name, garment)
            sets = sets and told_at(seam, garment.seams) is None
            sets = sets and not (entry.kind == TAPE and taped_elsewhere(seam, garment))
            if name in seam.cloths() and buys_its_notions(seam) and sets:
                sized = _by_length(entry) or _by_piece(entry)
                wide = width_of(name, seam, entry, garment) if sized else None
                small = entry.kind == BUTTON and not on_a_front(seam)
                ends = ends_of(entry, garment, [seam])
                lots.setdefault((wide, small, ends), []).append(seam)
        for (width, _, _), places in lots.items():
            found.append(replace(_bought(name, places, garment, knowledge), width=width))
    return found


def _spare(number: int, places: list[Seam]) -> int:
    """How many stones are bought besides: some crack, fall or hold badly (common practice)."""
    return math.ceil(number * LOST) if all(s.place == STONES for s in places) else 0


def _only_sewn_to(seam: Seam, name: str, entry: Entry, garment: Garment) -> bool:
    """Whether what is bought by the length only stands here again, and another place lays it.

    Hooks or snaps are sewn to a tape along its line; a seam is named with the stay that lies on it.
    """
    laid = [s for s in garment.seams if name in s.cloths() and s.place not in SEWN_ON]
    alike = [s for s in laid if {*the_words(s.name)} & {*the_words(seam.name)}]
    if entry.kind in BY_PIECE or seam.place not in SEWN_ON:
        return seam.place in JOINED and any(s.place == STAY for s in alike)
    return bool(laid if "length" not in seam.facts else alike)


def _of_its_channel(seam: Seam, name: str, garment: Garment) -> bool:
    """Whether bones are slid here into a channel of what another place has stitched on."""
    belongs = seam.companion
    hosts = belongs.hosts if belongs is not None and belongs.what == BONES else ()
    return any(name in s.cloths() for s in garment.seams if s.name in hosts)


def _bought(name: str, places: list[Seam], garment: Garment, knowledge: Knowledge) -> NotionBought:
    entry = knowledge.entries[garment.cloths[name].entry]
    names = tuple(seam.name for seam in places)
    if _by_piece(entry):
        zips = entry.kind == "zip"
        apart = apart_of(entry)
        rows = any(
            is_row(seam, entry) and holes_for(seam, entry, garment) is None for seam in places
        )
        counted = [_number(seam, entry, garment) for seam in places]
        cut = tuple(
            Lengths(number, _of_zip(entry, cut_of(seam, name, entry)))
            for seam, number in zip(places, counted, strict=True)
            if zips or (apart is None and seam.place == HOOKED and "length" in seam.facts)
        )
        return NotionBought(
            name,
            names,
            sum(counted),
            cut,
            None,
            apart=apart if rows else None,
            spare=_spare(sum(counted), places) if apart is None else SPARE,
        )
    if entry.kind in ONCE:
        return NotionBought(name, names, 1, (), None)
    if not _by_length(entry):
        sewn = (seam for seam in places if seam.place != QUILTING)
        longest = max((seam.long_mm for seam in sewn), default=0.0)
        cut = () if longest else (Lengths(1, None),)
        return NotionBought(name, names, None, cut, None, least=longest or None)
    ends = ends_of(entry, garment, places)
    bone = entry.kind == BONE and not ends
    laced = entry.id == CORD
    cut, whole = lengths_of(
        cords(seam, garment, knowledge)
        if laced
        else (seam.making.times, cut_of(seam, name, entry, garment.seams, bone=bone))
        for seam in places
    )
    bends = _bends(garment.cloths[name]) if entry.kind == BONE else ()
    tried = is_tried(entry, places, name)
    less = told_less(entry, places) if tried else ()
    return NotionBought(name, names, None, cut, whole, ends, bends=bends, tried=tried, less=less)


def lengths_of(
    every: Iterable[tuple[int, float | None]],
) -> tuple[tuple[Lengths, ...], float | None]:
    """Lengths, mm, longest first, and all together; None where one of them is not said."""
    found = sorted((Lengths(*each) for each in every), key=lambda each: -(each.each or 0.0))
    known = [each.number * each.each for each in found if each.each is not None]
    return tuple(found), sum(known) if len(known) == len(found) else None


def ends_of(entry: Entry, garment: Garment, places: Iterable[Seam] = ()) -> float:
    """What one length of a notion takes for its ends, mm; no more than may hang from a child.

    Where it is lapped into a ring at all of its places it has no ends to be held by.
    """
    ends = entry.facts.get("ends", {"mm": 0.0})
    short = ends.get("on a child") if garment.maker.worn_by == "child" else None
    takes = float(ends["mm"] if short is None else short)
    kinds = {seam.place for seam in places}
    if entry.kind == ELASTIC and kinds and kinds <= LAPPED:
        takes = min(takes, LAP)
    return as_measured(takes, garment.units)


def as_measured(ends: float, units: str) -> float:
    """What ends take, mm, as a tape measure shows it: by inches up to the next quarter."""
    return math.ceil(ends / QUARTER - 1e-9) * QUARTER if units == "us" else ends


def _by_length(entry: Entry) -> bool:
    """Whether it is bought by the length: what its file says goes before what its kind says."""
    said = entry.facts.get("sold by")
    return entry.kind in BY_LENGTH if said is None else bool(said == "length")


def is_sheet(entry: Entry) -> bool:
    """Whether it is a notion that is cut to pieces like a cloth, as an interfacing."""
    said = entry.facts.get("sold by")
    return entry.kind in STIFFENS if said is None else bool(said == "sheet")


def _of_zip(entry: Entry, opening: float | None) -> float | None:
    """How long a zip is bought: a concealed one is sewn in from below its slider."""
    tail = CONCEALED_TAIL if entry.id == CONCEALED else 0.0
    return None if opening is None else opening + tail


def _by_piece(entry: Entry) -> bool:
    """Whether it is counted: what its file says goes before what its kind says."""
    said = entry.facts.get("sold by")
    return entry.kind in BY_PIECE if said is None else bool(said == "piece")


def cut_of(
    seam: Seam, name: str, entry: Entry, seams: Iterable[Seam] = (), *, bone: bool = False
) -> float | None:
    """How long it is cut for one time of its place: shorter by what it is stretched.

    A bone is shorter than its channel by what is left free at its ends; an elastic of which the
    body is said is cut from that.
    """
    body = next((use.body for use in seam.uses if use.cloth == name and use.body), None)
    if body is not None:
        return from_body(entry, seam, body, seams)
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


def _number(seam: Seam, entry: Entry, garment: Garment) -> int:
    """How many of what is sold by the piece a place takes."""
    if entry.kind != "zip":
        return number_in(seam, entry, garment)
    one = {"front", "centre"} & {*the_words(seam.name)}
    return 1 if seam.making.times == 2 and one else seam.making.times


def _elastic_in(seam: Seam, garment: Garment, knowledge: Knowledge) -> bool:
    """Whether an elastic is named among the layers, which draws it up and is bought as itself."""
    return any(knowledge.entries[garment.cloths[n].entry].kind == "elastic" for n in seam.cloths())


def drawn_by_elastic(garment: Garment, knowledge: Knowledge) -> NotionBought | None:
    """Elastic that draws a full edge up and is named nowhere: as long as the edges it draws to."""
    drawn = [
        s
        for s in garment.seams
        if drawn_up_by(s) == "elastic" and not _elastic_in(s, garment, knowledge)
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
    elastic = knowledge.entries[GATHERING]
    width = usual_width(elastic, drawn[0])
    return NotionBought(
        "elastic for gathering",
        names,
        None,
        cut,
        whole,
        ends_of(elastic, garment),
        width=width,
    )

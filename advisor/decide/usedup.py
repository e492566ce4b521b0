"""What the ways of making use up, and the tools that they ask for besides.

Glue, sealing tape, cord, topstitching thread; a foot, a punch, a die. A method says what it
needs; a thing that several places need is bought once for all of them.
"""

from __future__ import annotations

from collections.abc import Mapping

from msgspec.structs import replace

from advisor.construction.laced import LACING, cords
from advisor.construction.notionlist import SPARE, as_measured, lengths_of
from advisor.decide.kit import Need, by_the_length, state_of
from advisor.knowledge.model import Knowledge
from advisor.knowledge.places import Method, Thing
from advisor.project.buttons import buttons_of
from advisor.project.garment import Garment, Seam

GROUP, TOOL, FOOT = "in the seam", "tool", " foot"
LENGTH, FULL, PIECE, ROW, ONCE = "length", "full length", "piece", "row", "once"
GOGGLES = Thing("goggles", ONCE, tool=True)
HARD, SEAMED = 2, frozenset({"seam", "yoke"})
"""The level of `embellished` that throws splinters; kinds of place that it is cleared from."""
LACED = "laced"
BUTTONHOLE, BUTTON = "buttonhole", "button"
LOST = frozenset({"button", "hook", "snap"})
"""What one more is bought of, for one gets lost; nobody keeps a second buckle."""
GLUE = frozenset({"glue"})
"""A glue of any name is the one that a place wants."""
FASTENERS = frozenset({"zip", "button", "hook-and-loop", "trim", "tape"})
"""Kinds of notion that close a garment; a frog is a trim, a row of snaps may be a tape."""


def used_up(
    garment: Garment, methods: Mapping[str, Method], knowledge: Knowledge | None = None
) -> list[Need]:
    """Everything that the methods of a garment use up, with the places that want it.

    Args:
        garment: the garment, whose places have their lengths and times.
        methods: the way in which each place is made, by its name.
        knowledge: what the notions of its places are; None where the project names none.
    """
    wanted: dict[Thing, list[str]] = {}
    for seam in garment.seams:
        method = methods.get(seam.name)
        for thing in method.buys if method is not None else ():
            if thing.unless and _sewn_on(seam, thing, garment, methods):
                continue
            if thing.unit == LACED and _laced_elsewhere(seam, garment):
                continue
            if thing.tool or not _named(seam, thing, garment, knowledge):
                wanted.setdefault(thing, []).append(seam.name)
        if knowledge is not None and _cleared(seam, garment, knowledge):
            wanted.setdefault(GOGGLES, []).append(seam.name)
    return [_need(thing, tuple(names), garment, knowledge) for thing, names in wanted.items()]


def _cleared(seam: Seam, garment: Garment, knowledge: Knowledge) -> bool:
    """Whether sequins, beads or stones are cut and crushed off the allowances of a seam."""
    entries = (knowledge.entries[garment.cloths[name].entry] for name in seam.cloths())
    return seam.place in SEAMED and any(
        e.kind == "cloth" and e.traits.get("embellished", (0, 0))[0] >= HARD for e in entries
    )


def _sewn_on(seam: Seam, thing: Thing, garment: Garment, methods: Mapping[str, Method]) -> bool:
    """Whether a place of its own sews on the buttons of these holes, or hooks to this ribbon."""
    held = {name for name in seam.cloths() if garment.cloths[name].put_in}
    others = [s for s in garment.seams if s is not seam and held & set(s.cloths())]
    sewn = (methods.get(other.name) for other in (*buttons_of(seam, garment), *others))
    return any(method is not None and method.id in thing.unless for method in sewn)


def _laced_elsewhere(seam: Seam, garment: Garment) -> bool:
    """Whether a place of its own laces these holes, and so buys the cord."""
    lacings = (s for s in garment.seams if s.place == LACING and s is not seam)
    return seam.place != LACING and any(set(s.cloths()) & set(seam.cloths()) for s in lacings)


def unnamed_buttons(
    garment: Garment, methods: Mapping[str, Method], knowledge: Knowledge
) -> frozenset[str]:
    """The buttonholes of a garment for which it names no buttons anywhere."""
    holes = {seam.name for seam in garment.seams if seam.place == BUTTONHOLE}
    needs = used_up(garment, methods, knowledge)
    sewn = (need for need in needs if need.word == BUTTON)
    return frozenset(holes & {name for need in sewn for name in need.places})


def _named(seam: Seam, thing: Thing, garment: Garment, knowledge: Knowledge | None) -> bool:
    """Whether the project names among its layers what a place takes, so that it is bought."""
    if knowledge is None:
        return False
    anywhere = thing.unit == LACED
    names = garment.cloths if anywhere else seam.cloths()
    entries = [knowledge.entries[garment.cloths[name].entry] for name in names]
    either = set(thing.name.split(" for ")[0].split(" or "))
    if any(e.kind != "cloth" and either & {e.name, *e.also, *GLUE & {e.kind}} for e in entries):
        return True
    closes = thing.unit not in (ONCE, LACED) and _fastens(seam, knowledge)
    return closes and any(entry.kind in FASTENERS for entry in entries)


def _fastens(seam: Seam, knowledge: Knowledge) -> bool:
    kind = knowledge.places.kinds.get(seam.place)
    return kind is not None and kind.family == "fastening"


def _need(
    thing: Thing, places: tuple[str, ...], garment: Garment, knowledge: Knowledge | None
) -> Need:
    seams = [seam for seam in garment.seams if seam.name in places]
    counted = thing.unit == PIECE or all(seam.making.counted or _one(seam) for seam in seams)
    number = sum(seam.making.times for seam in seams) if thing.unit in (PIECE, ROW) else None
    if thing.unit == ONCE and not thing.tool:
        number = 1
    notes = [thing.note] if thing.note else []
    if not counted and thing.unit == ROW:
        number = None
        notes.append("not counted, for no number is said")
    foot = thing.name.endswith(FOOT)
    group = ("foot" if foot else TOOL) if thing.tool else GROUP
    name = f"{thing.name} ({'; '.join(notes)})" if notes else thing.name
    need = Need(
        group,
        name,
        "",
        thing.name,
        places,
        state_of(garment, "feet" if foot else "tools", thing.name.removesuffix(FOOT)),
        number=number,
        spare=SPARE if number and thing.unit == ROW and LOST & set(thing.name.split()) else 0,
    )
    if thing.unit == LACED and knowledge is not None:
        return _of_lacings(need, garment, knowledge, thing.ends)
    if thing.unit not in (LENGTH, FULL):
        return need
    return by_the_length(
        need, garment, as_measured(thing.ends, garment.units), full=thing.unit == FULL
    )


def _one(seam: Seam) -> bool:
    """Whether a place is called after one fastening and is no row, as a waist hook."""
    return seam.name.casefold().split()[-1] in LOST and not seam.facts.get("length")


def _of_lacings(need: Need, garment: Garment, knowledge: Knowledge, ends: float) -> Need:
    """A cord for each lacing, with its ends; one through all holes where no place laces them."""
    seams = [seam for seam in garment.seams if seam.name in need.places]
    laced = [seam for seam in seams if seam.place == LACING] or seams[:1]
    cut, whole = lengths_of(cords(seam, garment, knowledge) for seam in laced)
    return replace(need, length=whole, cut=cut, ends=as_measured(ends, garment.units))

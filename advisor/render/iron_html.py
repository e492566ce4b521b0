"""The iron across the layers of each place as what a template sets.

The words are those of `iron`; the drawing stands beside a table that says the same.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

from msgspec import Struct

from advisor.answer.model.answer import Answer
from advisor.answer.model.heat import ToldIron
from advisor.render.iron_picture import iron_svg, layers_at
from advisor.render.iron_text import alike, cited, common_text, layer_texts, presses, source_kinds
from advisor.render.plain import plain_section
from advisor.render.printed.blocks import sections
from advisor.render.printed.digest import digest
from advisor.render.printed.html import PICTURE
from advisor.render.printed.numbers import Numbers
from advisor.render.printed.section import Section


class Board(Struct, frozen=True):
    """Places that are alike: their drawing, their layers, what all bear, and how to press."""

    names: tuple[str, ...]
    drawing: str
    layers: tuple[tuple[str, str, str], ...]
    common: str
    presses: tuple[tuple[str, str], ...]


class Irons(Struct, frozen=True):
    """What the template of the iron sets."""

    garment: str
    before: tuple[Section, ...]
    boards: tuple[Board, ...]
    after: tuple[Section, ...]
    sources: tuple[tuple[str, str, str], ...]
    caption: str = PICTURE


def heat_only(report: Answer) -> Answer:
    """The part of a report that is about the iron."""
    return replace(
        report,
        conflicts=tuple(c for c in report.conflicts if c.aspect.startswith("press.")),
        cautions=tuple(c for c in report.cautions if c.kind == "burn" or c.area == "press"),
        unknowns=tuple(u for u in report.unknowns if u.limit_c is not None),
    )


def irons_of(report: Answer) -> Irons:
    """What can go wrong under the iron, the layers of each place, and what burns."""
    heat = heat_only(report)
    numbers = Numbers(heat, most=2, short=True)
    every = map(plain_section, sections(heat, numbers, digest(heat)))
    found = {s.id: s for s in every}
    return Irons(
        garment=report.garment,
        before=tuple(found[k] for k in ("conflicts",) if k in found),
        boards=tuple(_board(same, report) for same in alike(report.iron or ())),
        after=tuple(found[k] for k in ("cautions", "unknowns") if k in found),
        sources=tuple(numbers.entries()),
    )


def at_the_board(report: Answer, place: str) -> Irons:
    """One place alone, with no more sources than its table names."""
    iron = tuple(i for i in report.iron or () if i.place.casefold() == place.casefold())
    ids = {id_ for found in iron for layer in found.layers for id_ in cited(layer)}
    named = sorted((s.id, s.citation) for s in report.sources if s.id in ids)
    boards = tuple(_board(same, report) for same in alike(iron))
    return Irons(report.garment, (), boards, (), tuple((*one, "") for one in named))


def _board(places: Sequence[ToldIron], report: Answer) -> Board:
    place, units, kinds = places[0], report.units, source_kinds(report)
    layers = tuple((x.name, *layer_texts(x, units, kinds)) for x in place.layers)
    return Board(
        names=tuple(str(p.place) for p in places),
        drawing=iron_svg(layers_at(place), f"Iron limits: {place.place}", units),
        layers=layers,
        common=common_text(place, units),
        presses=tuple(presses(places, report)),
    )

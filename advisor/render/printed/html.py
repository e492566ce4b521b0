"""The handling sheet as one page: readable without a network, a script, a colour or a screen.

What stands on it is chosen in `blocks`; here it is sorted into what a template sets, with the
seams as rows so that a setting is found at the machine by looking down its column.
"""

from __future__ import annotations

from collections.abc import Sequence

from msgspec import Struct

from advisor.answer.model.answer import Answer
from advisor.render.heat_svg import nearest_svg
from advisor.render.iron_picture import iron_svg, layers_of
from advisor.render.markup import rendered, whole_page
from advisor.render.plain import plain_section
from advisor.render.printed.blocks import EXCEPT, Room, sections
from advisor.render.printed.compact import LINES, fitted_lines
from advisor.render.printed.digest import digest
from advisor.render.printed.numbers import STAR, Numbers
from advisor.render.printed.pagefit import SIZES, Amount, amount_of, fits
from advisor.render.printed.section import COLUMNS, Item, Part, Section
from advisor.render.printed.style import PAPER, style
from advisor.units import System

USUAL = "as every seam"
PICTURE = (
    "Bar: borne. Hatched: takes a press. Stroke: limit. Diamond: wanted, not borne. Dotted: what "
    "one, two, three dots may reach."
)
HEAT_PICTURE = (
    "Where heat comes soonest to a limit, computed and not measured. Line: likely; field: least to "
    "most; rule: the limit of the layer with its letter."
)


class Row(Struct, frozen=True):
    """A seam: its settings by column, and what is no setting."""

    name: str
    about: str
    cells: tuple[tuple[Part, ...], ...]
    rest: tuple[Part, ...]
    empty: str


class Table(Struct, frozen=True):
    """The seams, and above them what most of them share."""

    title: str
    titles: tuple[str, ...]
    every: tuple[Item, ...]
    rows: tuple[Row, ...]


FIRST = ("conflicts", "checks", "guesses", "missing", "cautions", "gave-way", "parts")
"""What stands before the pictures: what goes wrong or does not agree, what to mind, the parts."""


class Sheet(Struct, frozen=True):
    """What the template of a sheet sets; `size` is how large the type can be on two pages."""

    garment: str
    size: str
    before: tuple[Section, ...]
    iron: str
    heat: str
    heat_kind: str
    cloths: tuple[Section, ...]
    table: Table | None
    after: tuple[Section, ...]
    sources: tuple[tuple[str, str, str], ...]
    star: str
    iron_caption: str = PICTURE
    heat_caption: str = HEAT_PICTURE


def render_html(report: Answer) -> str:
    """The sheet as a whole page; with a picture of the iron where that was asked for."""
    sheet = sheet_of(report)
    main = rendered("sheet_main.html", {"sheet": sheet})
    return document(f"{report.garment}: handling sheet", main, report.units)


def document(title: str, main: str, units: System = "metric") -> str:
    """A whole page around a main part that is markup already."""
    paper = PAPER[units]
    return whole_page(title, main, f"{style()}{paper}\n")


def sheet_of(report: Answer, numbers: Numbers | None = None, without: Sequence[str] = ()) -> Sheet:
    """What stands on the sheet of an answer, in the places that a page has for it.

    Args:
        report: the answer.
        numbers: what marks the sources of a whole booklet, where the sheet is one part of it and
            has all the room it wants; without them the sheet is fitted on two pages.
        without: sections that stand elsewhere.
    """
    iron, units = report.iron or (), report.units
    room = Room() if numbers else fitted_lines(report, LINES[units])[1]
    numbers = numbers or Numbers(report, most=2, short=True)
    every = map(plain_section, sections(report, numbers, digest(report), room))
    found = {s.id: s for s in every}
    amount = amount_of(report, tuple(found.values()), numbers)
    size = _size(amount)
    heat = nearest_svg(report.heat or (), units) if iron else ""
    known = (*FIRST, "cloths", "seams", *without)
    return Sheet(
        garment=report.garment,
        size=size,
        before=tuple(found[k] for k in FIRST if k in found),
        iron=iron_svg(layers_of(iron), "What iron each cloth bears", units) if iron else "",
        heat=heat,
        heat_kind="" if fits(amount, SIZES[size], heat=True) else "screen",
        cloths=tuple(found[k] for k in ("cloths",) if k in found),
        table=table_of(found["seams"]) if "seams" in found else None,
        after=tuple(s for key, s in found.items() if key not in known),
        sources=tuple(numbers.entries()),
        star=STAR if numbers.starred else "",
    )


def table_of(section: Section) -> Table:
    """The seams as a table, what most or several of them share above it."""
    common = ("", EXCEPT)
    every = tuple(item for item in section.items if item.about in common)
    empty = USUAL if every else "nothing special"
    rows = tuple(_row(item, empty) for item in section.items if item.about not in common)
    return Table(section.title, tuple(title for title, _ in COLUMNS), every, rows)


def _row(item: Item, empty: str) -> Row:
    inside = [label for _, labels in COLUMNS for label in labels]
    cells = tuple(tuple(p for p in item.parts if p.label in labels) for _, labels in COLUMNS)
    rest = tuple(part for part in item.parts if part.label not in inside)
    return Row(item.lead, item.about, cells, rest, empty)


def _size(amount: Amount) -> str:
    """The largest type in which a sheet keeps to two pages."""
    return next((name for name, points in SIZES.items() if fits(amount, points)), "large")

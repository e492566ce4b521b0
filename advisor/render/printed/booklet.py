"""Everything for the wall in one booklet: sheet, order with boxes, shopping, label, scrap tests.

It is set in 10 point or more. The name of the garment, the date and the number of the page stand
in the margin of every page, by rules of style that a browser follows when it prints.
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from datetime import date

from msgspec import Struct
from msgspec.structs import replace

from advisor.answer.model.answer import Answer
from advisor.answer.model.order import ToldStep
from advisor.errors import InputError
from advisor.render.label_html import LabelView, label_view
from advisor.render.lay_svg import lay_svg
from advisor.render.layers_svg import layers_svg, layers_words
from advisor.render.making_blocks import STANDS_FOR, shopping, tests_in_full
from advisor.render.markup import FOLDER, css_string, rendered, whole_page
from advisor.render.order_svg import KEY, order_svg
from advisor.render.plain import plain_section, without_commands
from advisor.render.printed.html import Sheet, sheet_of
from advisor.render.printed.numbers import STAR, Numbers
from advisor.render.printed.section import Item, Section
from advisor.render.printed.style import style

PAPERS = {"a4": "A4", "letter": "letter"}
MARKS = (
    ("[1, 2]", "whose word it is, listed at the end of this booklet"),
    ("c", "common practice of the trade"),
    ("d", "follows by arithmetic or logic from other values"),
    ("m, e", "from memory; our own estimate"),
    ("y", "your own test"),
    ("*", STAR.removeprefix("* ")),
    ("", "a box: a step or a test; tick it when it is done"),
    ("!", "no way back after this step"),
    ("\N{BLACK CIRCLE}", "a dot of the iron's dial"),
)
"""The key of the marks."""
_MONTHS = (
    *("January", "February", "March", "April", "May", "June"),
    *("July", "August", "September", "October", "November", "December"),
)
_ELSEWHERE = ("shopping", "tests")


class ScrapTest(Struct, frozen=True):
    """A test on scraps: what is laid together, how it is set, what to look at, what came of it.

    Without places it is a test of a length before it is cut, and needs no swatch.
    """

    layers: str
    places: str
    settings: str
    look: str
    results: tuple[str, ...]


class Lay(Struct, frozen=True):
    """How the pieces of a cloth are laid: a drawing, what it shows, and all pieces in words."""

    id: str
    name: str
    drawing: str
    text: str
    pieces: tuple[str, ...]


class Booklet(Struct, frozen=True):
    """What the template of a booklet sets."""

    garment: str
    day: str
    marks: tuple[tuple[str, str], ...]
    sheet: Sheet
    cuts: tuple[tuple[str, str, str], ...]
    steps: tuple[tuple[int, ToldStep], ...]
    assumed: tuple[str, ...]
    line: str
    line_key: str
    buy: tuple[Section, ...]
    lays: tuple[Lay, ...]
    label: LabelView | None
    trials: tuple[ScrapTest, ...]
    sources: tuple[tuple[str, str, str], ...]


def booklet_of(report: Answer, day: date, colours: Mapping[str, str] | None = None) -> Booklet:
    """The booklet of an answer with all its parts, made on some day; `colours` are by cloth."""
    units = report.units
    numbers = Numbers(report, most=2)
    sheet = sheet_of(report, numbers, _ELSEWHERE)
    buy = apart(plain_section(section) for section in shopping(report, numbers))
    label = label_view(report, numbers) if report.label is not None else None
    tests = tests_in_full(report, numbers)
    steps = report.work.order if report.work is not None else ()
    assumed = report.work.assumed if report.work is not None else ()
    return Booklet(
        garment=report.garment,
        day=day_words(day),
        marks=MARKS,
        sheet=sheet,
        cuts=tuple(
            (seam.name, layers_svg(seam, units, colours or {}), layers_words(seam, units))
            for seam in report.seams
        ),
        steps=tuple((step.number, step) for step in steps),
        assumed=tuple(filter(None, map(without_commands, assumed))),
        line=order_svg(steps) if steps else "",
        line_key=KEY,
        buy=buy,
        lays=lays_of(report),
        label=label,
        trials=tuple(_trial(item) for item in tests.items),
        sources=tuple(numbers.entries()),
    )


def render_booklet(
    report: Answer, day: date, paper: str, colours: Mapping[str, str] | None = None
) -> str:
    """The booklet as a whole page that stands by itself in a file.

    Raises:
        InputError: there is no such paper.
    """
    main = rendered("booklet.html", {"booklet": booklet_of(report, day, colours)})
    sheets = (style(), (FOLDER / "booklet.css").read_text(encoding="utf-8"))
    margins = margin_style(report.garment, day, paper)
    return whole_page(f"{report.garment}: booklet", main, "".join((*sheets, margins)))


def margin_style(garment: str, day: date, paper: str) -> str:
    """The rules that set the paper, and the name, day and number in the margin of each page.

    Raises:
        InputError: there is no such paper.
    """
    if paper not in PAPERS:
        raise InputError("paper is a4 or letter")
    name, made = css_string(garment[:80]), css_string(day_words(day))
    return (
        f"@page{{size:{PAPERS[paper]};margin:18mm 14mm 17mm;"
        f"@top-left{{content:{name};font-size:10pt}}"
        f"@top-right{{content:{made};font-size:10pt}}"
        '@bottom-right{content:"page " counter(page) " of " counter(pages);font-size:10pt}}\n'
    )


def day_words(day: date) -> str:
    """A day as it is written by hand, whatever the machine's language."""
    return f"{day.day} {_MONTHS[day.month - 1]} {day.year}"


def lays_of(report: Answer) -> tuple[Lay, ...]:
    """How the pieces of each cloth are laid."""
    units = report.units
    return tuple(
        Lay(
            f"lay-{number}",
            row.fabric,
            lay_svg(row, units),
            row.laid.text,
            tuple(lies.text for lies in row.laid.pieces),
        )
        for number, row in enumerate(report.cloth or (), 1)
        if row.laid is not None
    )


def apart(sections: Iterable[Section]) -> tuple[Section, ...]:
    """Sections of which no two share an id."""
    found: dict[str, Section] = {}
    for section in sections:
        id_ = section.id if section.id not in found else f"{section.id}-{len(found)}"
        found[id_] = replace(section, id=id_)
    return tuple(found.values())


def _trial(item: Item) -> ScrapTest:
    told = {part.label: part.text for part in item.parts}
    results = tuple(p.text for p in item.parts if p.label == "result" and p.text.strip("_"))
    places = item.about.removeprefix(STANDS_FOR) if item.about.startswith(STANDS_FOR) else ""
    return ScrapTest(item.lead, places, told.get("set", ""), told.get("look", ""), results)

"""The handling sheet as one page: readable without a network, a script, a colour or a screen.

What stands on it is chosen in `blocks`; here it becomes headings, lists and one table, with the
seams as rows so that a setting is found at the machine by looking down its column.
"""

from __future__ import annotations

from collections.abc import Callable, Sequence
from html import escape
from typing import Any

from advisor.answer.model.answer import Answer
from advisor.answer.model.heat import ToldIron
from advisor.render.heat_svg import nearest_svg
from advisor.render.iron_picture import iron_svg, layers_of
from advisor.render.printed.blocks import EXCEPT, sections
from advisor.render.printed.compact import fitted_lines
from advisor.render.printed.digest import digest
from advisor.render.printed.numbers import Numbers
from advisor.render.printed.section import Item, Part, Section
from advisor.render.printed.style import PAPER, STYLE
from advisor.units import System

COLUMNS: tuple[tuple[str, tuple[str, ...]], ...] = (
    ("Pin", ("pin",)),
    ("Needle, thread, stitch", ("stitch", "machine")),
    ("Seam and edges", ("seam",)),
    ("Press", ("press",)),
)
"""The columns of the seams and the lines that stand in each; other lines follow below the row."""
USUAL = "as every seam"
_SIZES = ((6500, "small"), (11000, "medium"))
LINES = {"metric": 188, "us": 170}
"""What of the text's lines two pages of A4 and two of US letter hold, the picture beside them."""
PICTURE = (
    "Bar: borne. Hatched: takes a press. Stroke: limit. Diamond: wanted, not borne. Dotted: what "
    "one, two, three dots may reach."
)
HEAT_PICTURE = (
    "Where heat comes soonest to a limit, computed and not measured. Line: likely; field: least to "
    "most; rule: the limit of the layer with its letter."
)


def render_html(report: Answer) -> str:
    """The sheet as a whole page; with a picture of the iron where that was asked for."""
    title = f"{report.garment}: handling sheet"
    return document(title, sheet_main(report), report.units)


def document(title: str, main: str, units: str = "metric") -> str:
    """A whole page around a main part."""
    paper = PAPER["us" if units == "us" else "metric"]
    return (
        '<!DOCTYPE html>\n<html lang="en">\n<head>\n<meta charset="utf-8"/>\n'
        '<meta name="viewport" content="width=device-width, initial-scale=1"/>\n'
        f"<title>{escape(title)}</title>\n<style>{STYLE}{paper}</style>\n</head>\n"
        f"<body>\n{main}\n</body>\n</html>\n"
    )


def sheet_main(report: Answer) -> str:
    """The sheet without the page around it."""
    iron = report.iron or ()
    numbers = Numbers(report, most=2, short=True)
    _, tight = fitted_lines(report, LINES["us" if report.units == "us" else "metric"])
    found = {s.id: s for s in sections(report, numbers, digest(report), tight)}
    size = _size(found.values())
    before = [section_html(found[k]) for k in ("conflicts", "cautions") if k in found]
    before += [_picture(report, iron)] if iron else []
    before += [_heat(report, size)] if iron else []
    before += [section_html(found["cloths"])] if "cloths" in found else []
    known = ("conflicts", "cautions", "cloths", "seams")
    after = [section_html(s) for key, s in found.items() if key not in known]
    parts = [
        f'<main class="{size}">\n<h1>{escape(str(report.garment))}</h1>',
        _columns(before),
        _seams(found["seams"]) if "seams" in found else "",
        _columns([*after, sources_html(numbers)]),
        "</main>",
    ]
    return "\n".join(parts)


def _size(found: Any) -> str:
    """How large the type can be on two pages."""
    amount = sum(
        len(p.text) for s in found for item in s.items for p in (*item.parts, Part(item.about))
    )
    return next((name for most, name in _SIZES if amount <= most), "large")


def _columns(parts: list[str]) -> str:
    return f'<div class="columns">\n{"".join(parts)}</div>'


def section_html(section: Section) -> str:
    """A heading and its items, set in the way of the section."""
    item = _WAYS.get(section.id, _plain)
    rows = "".join(f"{item(it, i)}\n" for i, it in enumerate(section.items, 1))
    tag = "ol" if section.id == "conflicts" else "ul"
    intro = f"<p>{escape(section.intro)}</p>\n" if section.intro else ""
    close = f'<p class="close">{escape(section.close)}</p>\n' if section.close else ""
    listed = f"<{tag}>\n{rows}</{tag}>\n" if rows else ""
    return headed(section.id, section.title, f"{intro}{listed}{close}")


def headed(id_: str, title: str, inside: str) -> str:
    """A section under its heading, which names it."""
    return (
        f'<section class="{id_}" aria-labelledby="{id_}">\n'
        f'<h2 id="{id_}">{escape(title)}</h2>\n{inside}</section>\n'
    )


def _clash(item: Item, _: int) -> str:
    """What clashes, how bad it is, and what to do instead."""
    told = " ".join(_part(part) for part in item.parts if not part.label)
    cures = "".join(
        f'<p class="do"><span class="label">{escape(_capital(p.label))}:</span> '
        f"{escape(p.text)}</p>"
        for p in item.parts
        if p.label
    )
    return (
        f'<li class="item"><span class="n" aria-hidden="true">{item.number}</span>'
        f'<h3>{escape(item.lead)}</h3> <strong class="sort">{escape(item.about)}</strong> '
        f'<p class="told">{told}</p>{cures}</li>'
    )


def _plain(item: Item, _: int) -> str:
    """A name, what it is, and then its parts."""
    about = f' <span class="about">({escape(item.about)})</span>' if item.about else ""
    parts = " ".join(_part(part) for part in item.parts)
    return f'<li class="item"><h3>{escape(_capital(item.lead))}</h3>{about}. {parts}</li>'


def _cloth(item: Item, _: int) -> str:
    about = f' <span class="about">({escape(item.about)})</span>' if item.about else ""
    parts = " ".join(_part(part) for part in item.parts)
    return f'<li class="item"><h3>{escape(item.lead)}</h3>{about}. {parts}</li>'


def _fact(item: Item, _: int) -> str:
    parts = " ".join(_part(part) for part in item.parts)
    return f'<li class="item"><span class="label">{escape(item.lead)}:</span> {parts}</li>'


def _test(item: Item, _: int) -> str:
    """A box to tick with a pen, a sandwich of scraps, and what to look for."""
    parts = " ".join(_part(part) for part in item.parts)
    return (
        '<li class="item"><span class="box" aria-hidden="true"></span>'
        f'<span class="label">{escape(item.lead)}.</span> {parts}</li>'
    )


def _part(part: Part) -> str:
    """A labelled part ends with a full stop; the others are sentences already."""
    if not part.label:
        return f"{escape(part.text)}{_marks(part.marks)}"
    return f'<span class="label">{escape(_capital(part.label))}:</span> {_answer(part)}.'


def _answer(part: Part) -> str:
    """The text of a part with its beginning in bold, or where the same was said."""
    if part.same:
        return f"as in {escape(part.same)}"
    head = f"<strong>{escape(part.head)}</strong>" if part.head else ""
    return f"{head}{escape(part.text[len(part.head) :])}{_marks(part.marks)}"


def _marks(marks: str) -> str:
    """`[3,c]` raised, each leading to its source."""
    if not marks:
        return ""
    links = [
        f'<a href="#source-{mark.rstrip("*")}">{escape(mark)}</a>'
        for mark in marks.strip("[]").split(",")
    ]
    return f"<sup>{','.join(links)}</sup>"


def _seams(section: Section) -> str:
    """The seams as a table, each in a body of its own so that none is torn over two pages."""
    titles = ["Seam", *(title for title, _ in COLUMNS)]
    head = "".join(f'<th scope="col" role="columnheader">{escape(t)}</th>' for t in titles)
    common = ("", EXCEPT)
    every = "".join(_every(item) for item in section.items if item.about in common)
    empty = USUAL if every else "nothing special"
    bodies = "".join(_seam(item, empty) for item in section.items if item.about not in common)
    table = (
        f'<table role="table">\n<thead role="rowgroup"><tr role="row">{head}</tr></thead>\n'
        f"{bodies}</table>\n"
    )
    return headed(section.id, section.title, every + table)


def _every(item: Item) -> str:
    """What most or several seams share, above the table."""
    about = f" {escape(item.about)}" if item.about else ""
    parts = " ".join(_part(part) for part in item.parts)
    return f'<p class="every"><strong>{escape(_capital(item.lead))}</strong>{about}. {parts}</p>\n'


def _seam(item: Item, empty: str) -> str:
    """The row of a seam, and a row below it for what is no setting."""
    inside = [label for _, labels in COLUMNS for label in labels]
    cells = ""
    for title, labels in COLUMNS:
        told = "; ".join(_answer(p) for p in item.parts if p.label in labels)
        cells += f'<td role="cell" data-label="{escape(title)}">{told or empty}</td>'
    rest = " ".join(_part(part) for part in item.parts if part.label not in inside)
    span = ' rowspan="2"' if rest else ""
    row = ' class="has-more"' if rest else ""
    more = (
        f'<tr class="more" role="row"><td role="cell" colspan="{len(COLUMNS)}">{rest}</td></tr>\n'
        if rest
        else ""
    )
    return (
        f'<tbody role="rowgroup">\n<tr{row} role="row"><th scope="rowgroup" role="rowheader"{span}>'
        f'{escape(item.lead)} <span class="about">({escape(item.about)})</span></th>{cells}</tr>\n'
        f"{more}</tbody>\n"
    )


def _picture(report: Answer, iron: Sequence[ToldIron]) -> str:
    """All cloths and the whole garment on one scale."""
    units: System = "us" if report.units == "us" else "metric"
    drawing = iron_svg(layers_of(iron), "What iron each cloth bears", units)
    figure = f"<figure>{drawing}<figcaption>{PICTURE}</figcaption></figure>\n"
    return headed("iron", "The iron", figure)


def _heat(report: Answer, size: str) -> str:
    """The place that is soonest at a limit; on paper only where the type is large and room left."""
    units: System = "us" if report.units == "us" else "metric"
    drawing = nearest_svg((report.heat or ()), units)
    if not drawing:
        return ""
    kind = "" if size == "large" else ' class="screen"'
    return f"<figure{kind}>{drawing}<figcaption>{HEAT_PICTURE}</figcaption></figure>\n"


def sources_html(numbers: Numbers) -> str:
    """What the raised marks stand for."""
    rows = ""
    for mark, text, more in numbers.entries():
        whole = f' <span class="screen">{escape(more)}</span>' if more else ""
        rows += f'<li id="source-{mark}"><b>{mark}</b> {escape(text)}{whole}</li>\n'
    return headed("sources", "On whose word", f"<ol>\n{rows}</ol>\n")


def _capital(text: str) -> str:
    return text[:1].upper() + text[1:]


_WAYS: dict[str, Callable[[Item, int], str]] = {
    "conflicts": _clash,
    "cloths": _cloth,
    "tests": _test,
    "checks": _fact,
    "unknowns": _fact,
}

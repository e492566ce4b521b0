"""The handling sheet of a project, set close so that a dozen seams fit two printed pages.

What stands on it is chosen in `blocks`; here it becomes lines. A cloth or a seam is one
paragraph; each paragraph is marked with its best sources. `detailed` prints the rest.
"""

from __future__ import annotations

from collections.abc import Callable

from advisor.answer.model.answer import Answer
from advisor.render.layout import heading, wrap
from advisor.render.printed.blocks import TIGHTEST, Room, sections
from advisor.render.printed.digest import Digest, digest
from advisor.render.printed.numbers import Numbers
from advisor.render.printed.pagefit import amount_of, fits
from advisor.render.printed.section import Item, Part, Section

WIDTH = 120
LINES = {"metric": 184, "us": 170}
"""Lines that two pages take, of A4 and of Letter, the picture of the page beside them.

Text and page are cut to the same, so that both say the same.
"""
MOST_SPARE = 64
"""Things to do that a sheet is filled up with at most."""


def render_sheet(report: Answer) -> str:
    """The sheet, with as much as fits two pages."""
    lines, _ = fitted_lines(report, LINES[report.units])
    return "\n".join(lines) + "\n"


def fitted_lines(report: Answer, most: int) -> tuple[list[str], Room]:
    """The lines of the sheet, and the room it had to keep to, so as to have no more than `most`.

    A garment that does not fit at the tightest gets more pages: no danger is ever left out.
    """
    chosen = digest(report)
    for step in range(TIGHTEST + 1):
        lines, fit = lines_in(report, chosen, Room(step), most)
        if fit:
            return _filled(report, chosen, lines, step, most) if step else (lines, Room())
    return lines, Room(TIGHTEST)


def _filled(
    report: Answer, chosen: Digest, lines: list[str], step: int, most: int
) -> tuple[list[str], Room]:
    """The sheet with as many things to do more as still fit: one line too long drops no more."""
    low, high = 0, MOST_SPARE
    while low < high:
        spare = (low + high + 1) // 2
        tried, fit = lines_in(report, chosen, Room(step, spare), most)
        if fit:
            low, lines = spare, tried
        else:
            high = spare - 1
    return lines, Room(step, low)


def lines_in(
    report: Answer, chosen: Digest, room: Room, most: int = LINES["metric"]
) -> tuple[list[str], bool]:
    """The lines of the sheet in some room, and whether they are no more and fit two pages."""
    numbers = Numbers(report, most=2, short=True)
    lines = heading(f"{report.garment}: handling sheet", 1)
    found = sections(report, numbers, chosen, room)
    for section in found:
        lines += section_lines(section)
    lines += numbers.lines(WIDTH)
    return lines, len(lines) <= most and fits(amount_of(report, found, numbers))


def section_lines(section: Section) -> list[str]:
    """A heading, and each item set in the way of its section."""
    lines = heading(section.title) + (_para(section.intro) if section.intro else [])
    if section.id == "conflicts":
        for item in section.items:
            lines += _clash(item, item.number)
    else:
        setting = _SETTINGS.get(section.id, _titled)
        for item in section.items:
            lines += _para(setting(item))
    return lines + (_para(section.close) if section.close else [])


def _para(text: str, first: str = "  ", rest: str = "    ") -> list[str]:
    return wrap(text, first, rest, WIDTH)


def _clash(item: Item, number: int) -> list[str]:
    """What clashes, and below it what to do instead."""
    told = " ".join(part.marked for part in item.parts if not part.label)
    lines = _para(f"{item.lead}: {item.about}. {told}", f"{number:2} ")
    for part in item.parts:
        lines += _para(part.text, "    > ", "      ") if part.label else []
    return lines


def _titled(item: Item) -> str:
    """A name, what it is, and then its parts."""
    about = f" ({item.about})" if item.about else ""
    return f"{item.lead}{about}. {joined(item.parts)}"


def _fact(item: Item) -> str:
    """A fact as the report has it, and what it does."""
    return f"{item.lead}: {' '.join(p.marked for p in item.parts)}"


def _named(item: Item) -> str:
    """A word and then what belongs to it."""
    text = _fact(item)
    return text[:1].upper() + text[1:]


def _test(item: Item) -> str:
    """A box to tick, a sandwich of scraps and what to look for."""
    return f"[ ] {item.lead}. {joined(item.parts)}"


def joined(parts: tuple[Part, ...]) -> str:
    """Settings with their labels, then what is the same as elsewhere, then the rest."""
    texts = [f"{p.label.capitalize()}: {p.marked}." for p in parts if p.label and not p.same]
    same: dict[str, list[str]] = {}
    for part in parts:
        if part.same:
            same.setdefault(part.same, []).append(part.label)
    for earlier, labels in same.items():
        texts.append(f"{_and(labels).capitalize()} as in {earlier}.")
    return " ".join(texts + [part.marked for part in parts if not part.label])


def _and(words: list[str]) -> str:
    return " and ".join([", ".join(words[:-1]), words[-1]] if words[1:] else words)


_SETTINGS: dict[str, Callable[[Item], str]] = {
    "cautions": _named,
    "garment": _named,
    "checks": _fact,
    "missing": _fact,
    "gave-way": _fact,
    "unknowns": _fact,
    "tests": _test,
    "shopping": _named,
}

"""How much paper a sheet takes, reckoned from its words, so that it keeps to two pages.

The browser that prints sets the lines; here they are counted, by the sizes read from `sheet.css`
and a middling width of a letter. `tests/page` measures what a browser makes of whole garments.
"""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from typing import Final, NamedTuple

from advisor.answer.model.answer import Answer
from advisor.render.iron_picture import layers_of
from advisor.render.printed.numbers import STAR, Numbers
from advisor.render.printed.section import COLUMNS, Item, Part, Section
from advisor.render.printed.style import number
from advisor.units import System

SIZES: Final = {name: number(f".{name}{{font-size:", "pt") for name in ("small", "medium", "large")}
"""By class of a sheet, as much as there is on it, the size of its type in points."""
PAGES: Final = 2
_MM: Final = 72 / 25.4
_PAPER: Final = {"metric": (194 * _MM, 282 * _MM), "us": (201.9 * _MM, 266.4 * _MM)}
"""Width and height, pt, that the margins leave of A4 and of Letter."""
_LETTER: Final = 0.45
"""How wide a letter is on the whole, of the size of the type."""
_LINE: Final = number("body{padding:0;max-width:none;line-height:")
_GAP: Final = number("column-gap:", "mm") * _MM
"""Between two columns of text, pt."""
_ITEM, _HEADING, _ROW, _TITLE = 0.13, 1.7, 0.3, 2.0
"""What lies around an item, a heading, a row of the table and the title, in lines."""
_USED: Final = 0.932
"""What is used of two pages: nothing is parted from its heading, nor a row in two."""
_SAID: Final = [number(f"th:nth-child({n}){{width:", "%") / 100 for n in (1, 2, 3, 4)]
_CELLS: Final = (*_SAID, 1 - sum(_SAID))
"""How wide the columns of the seams are, the first with their names."""
_REST: Final = 1 - _CELLS[0]
_PADDING: Final = 0.7
_BAR, _BARS = 13 / 340, 30 / 340
"""Height of the picture of the iron for each layer and for its scale, of its width."""
_HEAT: Final = 0.6
"""Height of the picture of the heat, of its width."""
_SOURCE, _SOURCE_LINE = number(".sources{font-size:", "pt"), number("pt;line-height:")
"""The list of sources: its type, pt, and the height of a line of it."""


class Paper:
    """What takes how many lines at one size of type."""

    def __init__(self, units: System, points: float) -> None:
        wide, high = _PAPER[units]
        self.points = points
        self.full = wide
        self.half = (wide - _GAP) / 2
        self.lines_of_two_pages = PAGES * high / (points * _LINE) * _USED

    def lines(self, text: int, wide: float) -> int:
        """Lines that so many letters take in such a width, pt."""
        return -(-text // max(1, int(wide / (_LETTER * self.points))))

    def section(self, found: Section) -> float:
        """Lines that a section takes in one of two columns."""
        plain = [len(text) for text in (found.intro, found.close) if text]
        lines = sum(self.lines(n, self.half) for n in plain)
        return _HEADING + lines + sum(self._item(item) for item in found.items)

    def _item(self, item: Item) -> float:
        apart = [p for p in item.parts if p.label] if item.number else []
        told = [p for p in item.parts if p not in apart]
        lines = self.lines(len(item.lead) + len(item.about) + 4 + _letters(told), self.half)
        return _ITEM + lines + sum(self.lines(_letters([p]), self.half) for p in apart)

    def seams(self, found: Section) -> float:
        """Lines that the table of the seams takes over the whole width."""
        return _HEADING + 1 + sum(self._row(item) for item in found.items)

    def _row(self, item: Item) -> float:
        inside = [[p for p in item.parts if p.label in labels] for _, labels in COLUMNS]
        rest = [p for p in item.parts if not any(p in found for found in inside)]
        name = len(item.lead) + len(item.about) + 3
        texts = [name, *(sum(map(_answer, found)) for found in inside)]
        wide = [share * self.full - _PADDING * self.points for share in _CELLS]
        high = [self.lines(n, w) for n, w in zip(texts, wide, strict=True)]
        below = self.lines(_letters(rest), _REST * self.full)
        return _ROW * (2 if rest else 1) + max(max(high[1:]) + below, high[0])

    def sources(self, entries: Iterable[Sequence[str]], *, starred: bool) -> float:
        """Lines that the list of sources takes in one of two columns."""
        letters = sum(len(mark) + len(text) + 4 for mark, text, *_ in entries)
        small = self.lines(int(letters * _SOURCE / self.points), self.half)
        high = _SOURCE * _SOURCE_LINE / (self.points * _LINE)
        return _HEADING + small * high + (self.lines(len(STAR), self.half) if starred else 0)

    def iron(self, layers: int) -> float:
        """Lines that the picture of the iron takes, with its caption."""
        high = (_BARS + _BAR * layers) * self.half / (self.points * _LINE)
        return _HEADING + high + 2

    def heat(self) -> float:
        """Lines that the picture of the heat takes, with its caption."""
        return _HEAT * self.half / (self.points * _LINE) + 2


def _letters(parts: Iterable[Part]) -> int:
    return sum(_answer(p) + len(p.label) + 3 for p in parts)


def _answer(part: Part) -> int:
    # The marks are raised, and their letters half as wide.
    return len(part.same) + len("as in ") if part.same else len(part.text) + len(part.marks) // 2


class Amount(NamedTuple):
    """What has to stand on the pages: sections, what the marks stand for, layers under the iron."""

    found: Sequence[Section]
    entries: Sequence[Sequence[str]]
    starred: bool
    layers: int
    units: System


def amount_of(report: Answer, found: Sequence[Section], numbers: Numbers) -> Amount:
    """What a sheet of such sections has on it, once all its marks are set."""
    layers = len(layers_of(report.iron)) if report.iron else 0
    return Amount(found, numbers.entries(), numbers.starred, layers, report.units)


def fits(amount: Amount, points: float = SIZES["large"], *, heat: bool = False) -> bool:
    """Whether a sheet keeps to two pages at a size of type, with the picture of the heat or not."""
    paper = Paper(amount.units, points)
    return lines_on(paper, amount, heat=heat) <= paper.lines_of_two_pages


def lines_on(paper: Paper, amount: Amount, *, heat: bool = False) -> float:
    """Lines of the whole width that a sheet takes; what stands in two columns counts half."""
    seams = [s for s in amount.found if s.id == "seams"]
    halves = [paper.section(s) for s in amount.found if s.id != "seams"]
    halves.append(paper.sources(amount.entries, starred=amount.starred))
    halves += [paper.iron(amount.layers)] if amount.layers else []
    halves += [paper.heat()] if heat else []
    return _TITLE + sum(map(paper.seams, seams)) + sum(halves) / 2

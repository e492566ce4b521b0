"""What a sheet is made of, whatever sets it: sections of items of short parts."""

from __future__ import annotations

from msgspec import Struct


class Part(Struct, frozen=True):
    """A piece of an item: a label or none, a text, its marks, or where the same was said.

    `head` is the beginning of the text that a maker looks for at the table: needle, iron.
    """

    text: str
    label: str = ""
    marks: str = ""
    same: str = ""
    head: str = ""

    @property
    def marked(self) -> str:
        """The text with its marks."""
        return f"{self.text} {self.marks}".strip()


class Item(Struct, frozen=True):
    """A clash, a kind of caution, a cloth, a seam, a test: its name, what it is, its parts.

    `number` is what a clash is called by everywhere; nothing else has one.
    """

    lead: str
    about: str = ""
    parts: tuple[Part, ...] = ()
    number: int = 0


class Section(Struct, frozen=True):
    """A headed part of the sheet; `id` says how its items are set."""

    id: str
    title: str
    items: tuple[Item, ...]
    intro: str = ""
    close: str = ""


COLUMNS: tuple[tuple[str, tuple[str, ...]], ...] = (
    ("Pin", ("pin",)),
    ("Needle, thread, stitch", ("stitch", "machine")),
    ("Seam and edges", ("seam",)),
    ("Press", ("press",)),
)
"""The columns of the seams and the lines that stand in each; other lines follow below the row."""

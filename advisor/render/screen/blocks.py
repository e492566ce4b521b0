"""What a screen is made of: short blocks that know nothing of widths and colours."""

from __future__ import annotations

from msgspec import Struct


class Title(Struct, frozen=True):
    """The first line, and in a few words how it stands."""

    text: str
    state: str = ""


class Heading(Struct, frozen=True):
    """A heading of a part; `close` where there is no room for a blank line before it."""

    text: str
    close: bool = False


class Para(Struct, frozen=True):
    """A paragraph; `grave` where it tells of harm."""

    text: str
    grave: bool = False
    first: str = ""


class Rows(Struct, frozen=True):
    """Labels with what belongs to each."""

    rows: tuple[tuple[str, str], ...]


class Columns(Struct, frozen=True):
    """A table: a head, and rows whose first cell is a label.

    `widths` are the shares of the columns; without them the first is a label and the rest alike.
    """

    head: tuple[str, ...]
    rows: tuple[tuple[str, ...], ...]
    widths: tuple[int, ...] = ()


class Picture(Struct, frozen=True):
    """Lines that are drawn with letters and never wrapped."""

    lines: tuple[str, ...]


Block = Title | Heading | Para | Rows | Columns | Picture

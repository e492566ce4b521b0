"""The blocks of a screen as a template sets them, less what only a terminal needs."""

from __future__ import annotations

from collections.abc import Iterable

from msgspec import Struct

from advisor.render.plain import without_commands
from advisor.render.screen.blocks import Block, Columns, Heading, Para, Rows, Title


class Shown(Struct, frozen=True):
    """One block: which kind, and what of it a template reads."""

    kind: str
    text: str = ""
    first: str = ""
    grave: bool = False
    rows: tuple[tuple[str, ...], ...] = ()
    head: tuple[str, ...] = ()


def shown(blocks: Iterable[Block]) -> tuple[Shown, ...]:
    """The blocks in order; pictures of letters and the lines on further options are left out."""
    return tuple(found for block in blocks if (found := _shown(block)) is not None)


def _shown(block: Block) -> Shown | None:
    match block:
        case Title(state=state):
            return Shown("state", state) if state else None
        case Heading(text):
            return Shown("heading", text) if text else Shown("gap")
        case Para(text, grave, first):
            return Shown("para", without_commands(text), first.strip(" -"), grave)
        case Rows(rows):
            told = [(label, without_commands(text)) for label, text in rows if label != "more"]
            return Shown("rows", rows=tuple(row for row in told if row[1]))
        case Columns(head, rows):
            return Shown("columns", rows=rows, head=head)
        case _:
            return None

"""Draws blocks as text of a given width, with emphasis where the reader's terminal shows it."""

from __future__ import annotations

from collections.abc import Sequence
from io import StringIO
from typing import TYPE_CHECKING

from advisor.errors import visible
from advisor.render.screen.blocks import Block, Columns, Heading, Para, Picture, Rows, Title

if TYPE_CHECKING:
    from rich.console import Console, RenderableType
    from rich.text import Text

NARROW, WIDE = 48, 110
"""Columns: no line is shorter or longer, however the window is."""
LABEL = 9
"""The column of the labels, as wide as the longest of them."""


def drawn(
    blocks: Sequence[Block],
    width: int = 80,
    *,
    colour: bool = False,
    kept: dict[Block, str] | None = None,
) -> str:
    """Blocks as text.

    Args:
        blocks: what stands on the screen, in order.
        width: columns of the window.
        colour: whether the terminal shows emphasis; without it the text says all the same.
        kept: blocks that were drawn before in the same width and colour; more are added.
    """
    from rich.console import Console

    out = StringIO()
    console = Console(
        file=out,
        width=max(NARROW, min(width, WIDE)),
        force_terminal=colour,
        color_system="standard" if colour else None,
        no_color=not colour,
        highlight=False,
        markup=False,
        emoji=False,
    )
    kept = {} if kept is None else kept
    for block in blocks:
        if block not in kept:
            out.seek(0)
            out.truncate()
            _draw(block, console)
            kept[block] = out.getvalue()
    text = "".join(kept[block] for block in blocks)
    return "\n".join(line.rstrip() for line in text.splitlines()) + "\n"


def _words(text: str, style: str = "") -> Text:
    """A text in which nothing is left that a terminal would obey."""
    from rich.text import Text

    return Text(visible(text), style=style)


def _draw(block: Block, console: Console) -> None:

    match block:
        case Title(text, state):
            console.print(_words(text, style="bold"))
            if state:
                console.print(_indented(_words(state), "  "))
        case Heading(text, close):
            above = "\n" if text and not close else ""
            console.print(_words(f"{above}{text.upper()}", style="bold"))
        case Para(text, grave, first):
            console.print(_indented(_words(text, style="bold" if grave else ""), first or "  "))
        case Rows(rows):
            console.print(_rows(rows))
        case Columns(head, rows, widths):
            console.print(_columns(head, rows, widths))
        case Picture(lines):
            for line in lines:
                console.print(_words(line), no_wrap=True, overflow="crop", crop=True)


def _indented(text: RenderableType, first: str) -> RenderableType:
    """A paragraph with a hanging indent as wide as its first letters."""
    from rich.table import Table

    grid = Table.grid()
    grid.add_column(width=len(first), no_wrap=True)
    grid.add_column(overflow="fold")
    grid.add_row(first, text)
    return grid


def _rows(rows: Sequence[tuple[str, str]]) -> RenderableType:
    from rich.table import Table

    grid = Table.grid(padding=(0, 1, 0, 0))
    grid.add_column(width=1)
    grid.add_column(width=max(LABEL, *(len(label) for label, _ in rows)), no_wrap=True)
    grid.add_column(overflow="fold")
    for label, text in rows:
        grid.add_row("", _words(label, style="dim"), _words(text))
    return grid


def _columns(
    head: Sequence[str], rows: Sequence[Sequence[str]], widths: Sequence[int]
) -> RenderableType:
    from rich.table import Table

    grid = Table.grid(padding=(0, 1, 0, 0), expand=True)
    grid.add_column(width=1)
    if not widths:
        grid.add_column(width=LABEL, no_wrap=True)
    for share in widths or (1,) * (len(head) - 1):
        grid.add_column(ratio=share, overflow="fold")
    grid.add_row("", *(_words(name, style="bold") for name in head))
    for label, *cells in rows:
        grid.add_row("", _words(label, style="dim"), *map(_words, cells))
    return grid

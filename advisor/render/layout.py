"""Lines of text: wrapping, hanging indents and headings. Knows nothing of garments."""

from __future__ import annotations

import textwrap
from contextvars import ContextVar
from functools import lru_cache

WIDTH = 96
"""Columns of a page of text."""
NARROWEST = 48
_window: ContextVar[int] = ContextVar("window", default=10_000)


def fit_window(columns: int) -> None:
    """Let no line of this run be longer than the reader's window."""
    _window.set(max(NARROWEST, columns))


def wrap(text: str, first: str = "", rest: str | None = None, width: int = WIDTH) -> list[str]:
    """A paragraph in lines, with a first indent and a hanging one."""
    hanging = " " * len(first) if rest is None else rest
    return list(_wrapped(text, first, hanging, min(width, _window.get())))


@lru_cache(maxsize=4096)  # a sheet is tried in one room after another until it fits
def _wrapped(text: str, first: str, hanging: str, width: int) -> tuple[str, ...]:
    found = textwrap.wrap(
        text,
        width,
        initial_indent=first,
        subsequent_indent=hanging,
        break_long_words=False,
        break_on_hyphens=False,
    )
    return tuple(found) or (first.rstrip(),)


def heading(text: str, level: int = 2, width: int = WIDTH) -> list[str]:
    """A heading: the title is underlined, the others stand in capitals."""
    if level == 1:
        return [text, "=" * min(width, len(text))]
    return ["", text.upper()]


def row(label: str, text: str, indent: int = 2, column: int = 12, width: int = WIDTH) -> list[str]:
    """A label in a column of its own and a text that wraps beside it."""
    first = " " * indent + label.ljust(column) + ("" if len(label) < column else " ")
    return wrap(text, first, " " * (indent + column), width)

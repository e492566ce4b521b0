"""The reader's window: how wide it is, whether it shows emphasis, and when a pager is wanted."""

from __future__ import annotations

import os
import shutil
import sys

from msgspec import Struct

USUAL = 80
"""Columns of a page that is piped or kept."""


class Window(Struct, frozen=True):
    """Columns and lines, and whether a person looks at it."""

    width: int
    height: int
    person: bool

    @property
    def colour(self) -> bool:
        """Whether emphasis is shown: never in a pipe, with NO_COLOR, or on a dumb terminal."""
        plain = os.environ.get("NO_COLOR") or os.environ.get("TERM") == "dumb"
        return self.person and not plain


def window() -> Window:
    """The window that stdout is shown in."""
    person = sys.stdout is not None and sys.stdout.isatty()
    size = shutil.get_terminal_size((USUAL, 24))
    width = size.columns if person or os.environ.get("COLUMNS", "").isdigit() else USUAL
    return Window(width, size.lines, person)


def talked(text: str) -> str:
    """A remark or a question in lines of the window, so that no word breaks at its edge."""
    if sys.stderr is None or not sys.stderr.isatty():
        return text
    import textwrap

    whole = textwrap.TextWrapper(
        shutil.get_terminal_size((USUAL, 24)).columns,
        break_long_words=False,
        break_on_hyphens=False,
    )
    lines = text.split("\n")
    return "\n".join(line if len(line) <= whole.width else whole.fill(line) for line in lines)


def paged(text: str, where: Window) -> bool:
    """Show a text that is longer than the window through the reader's pager.

    Returns:
        whether it was shown; not where there is no person, no pager, or no need.
    """
    if not where.person or text.count("\n") < where.height or os.environ.get("PAGER") == "cat":
        return False
    import shlex
    import subprocess

    command = shlex.split(os.environ.get("PAGER") or "less -RFX")
    if shutil.which(command[0]) is None:
        return False
    try:
        subprocess.run(command, input=text.encode("utf-8", "backslashreplace"), check=False)
    except OSError:
        return False
    return True

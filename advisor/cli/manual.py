"""`advisor manual`: everything that can be typed, out of the help of the commands themselves."""

from __future__ import annotations

import re
import textwrap
from collections.abc import Iterator
from typing import Annotated, Any

import typer
from msgspec import Struct

from advisor import __version__
from advisor.cli import common
from advisor.cli.front import HELP

ENDS = (
    ("0", "nothing speaks against the plan"),
    ("1", "a conflict was found"),
    ("2", "what was typed or written could not be understood"),
    ("3", "the fault is ours; a report is written, and its place told"),
    ("130", "interrupted"),
)
"""Exit codes."""
VARIABLES = (
    ("ADVISOR_OWN", "the folder of your own knowledge"),
    ("ADVISOR_SETTINGS", "a file with your kit, for all projects"),
    ("ADVISOR_KNOWLEDGE", "another folder of knowledge than the one that came with the program"),
    ("ADVISOR_CACHE", "where compiled knowledge and drafts are kept"),
    ("COLUMNS", "how wide the lines are in a pipe"),
    ("NO_COLOR", "no emphasis"),
    ("PAGER", "what shows text longer than the window; cat for none"),
)
"""Variables of the environment that are heeded."""
_WIDTH = 78
_TYPE = re.compile(r"\s<[^>]*>")
_SLOT = re.compile(r"\{(\w+)\}")
Row = tuple[str, str]


class Chapter(Struct, frozen=True):
    """A command: how it is typed, what it does, its words and options, lines to try."""

    usage: str
    does: str
    rows: tuple[Row, ...]
    examples: tuple[str, ...]


def manual(
    *,
    man: Annotated[
        bool, typer.Option("--man", help="As a man page: advisor manual --man > advisor.1")
    ] = False,
) -> None:
    """Print the whole manual: every command with its options and examples."""
    common.print_text(man_page(parts()) if man else plain_text(parts()))


def parts() -> tuple[Chapter, ...]:
    """Every command, in the order of the help; those below another stand behind it."""
    from advisor.cli.app import app

    return tuple(_parts(typer.main.get_command(app), "advisor"))


def _parts(command: Any, typed: str) -> Iterator[Chapter]:
    for name, inner in command.commands.items():
        context = typer.Context(inner, info_name=name)
        pieces = " ".join(inner.collect_usage_pieces(context))
        about = [param.get_help_record(context) for param in inner.params]
        rows = tuple((_plain(term), _one_line(text)) for term, text in filter(None, about))
        told = (inner.epilog or "").removeprefix("Examples: ")
        lines = tuple(line for line in told.split("; ") if line)
        yield Chapter(_plain(f"{typed} {name} {pieces}"), _one_line(inner.help or ""), rows, lines)
        if hasattr(inner, "commands"):
            yield from _parts(inner, f"{typed} {name}")


def _plain(term: str) -> str:
    """A word or an option as a maker reads it, without the types of a program."""
    return _SLOT.sub(lambda slot: slot[1].upper(), _TYPE.sub(_typed_as, term))


def _typed_as(found: re.Match[str]) -> str:
    return " WORD" if found.string.startswith("-") else ""


def _one_line(text: str) -> str:
    return " ".join(text.split())


def plain_text(told: tuple[Chapter, ...]) -> str:
    """The manual as plain text."""
    lines = [f"advisor {__version__}", "", *textwrap.wrap(HELP, _WIDTH)]
    for part in told:
        lines += ["", part.usage, *_wrapped(part.does, 4)]
        for term, text in part.rows:
            lines += [f"    {term}", *_wrapped(text, 8)]
        lines += [f"    $ {line}" for line in part.examples]
    for title, rows in (("Exit status", ENDS), ("Environment", VARIABLES)):
        lines += ["", title, *(x for term, text in rows for x in _wrapped(f"{term}: {text}", 4))]
    return "\n".join(lines) + "\n"


def _wrapped(text: str, indent: int) -> list[str]:
    space = " " * indent
    return textwrap.wrap(text, _WIDTH, initial_indent=space, subsequent_indent=space)


def man_page(told: tuple[Chapter, ...]) -> str:
    """The manual in the macros of man(7), as `man -l` and groff take it."""
    lines = [
        f'.TH ADVISOR 1 "" "advisor {__version__}" "User commands"',
        ".SH NAME",
        f"advisor \\- {_roff(HELP.rstrip('.'))}",
        ".SH SYNOPSIS",
        "advisor COMMAND [OPTIONS] ...",
        ".SH COMMANDS",
    ]
    for part in told:
        lines += [f".SS {_roff(part.usage)}", _roff(part.does)]
        for term, text in part.rows:
            lines += [".TP", f".B {_roff(term)}", _roff(text) or "\\&"]
        if part.examples:
            lines += [".PP", "Examples:", ".nf", *map(_roff, part.examples), ".fi"]
    for title, rows in (("EXIT STATUS", ENDS), ("ENVIRONMENT", VARIABLES)):
        lines.append(f".SH {title}")
        for term, text in rows:
            lines += [".TP", f".B {_roff(term)}", _roff(text)]
    return "\n".join(lines) + "\n"


def _roff(text: str) -> str:
    """Text in which nothing is a request or an escape."""
    told = text.replace("\\", "\\e").replace("-", "\\-")
    return f"\\&{told}" if told.startswith((".", "'")) else told

"""The sheet as a page: into a file, whole or not at all, or to stdout."""

from __future__ import annotations

from pathlib import Path
from typing import TYPE_CHECKING, Annotated

import typer

from advisor.cli.output import print_text, say
from advisor.errors import visible

if TYPE_CHECKING:
    from datetime import date

    from advisor.answer.model.answer import Answer
    from advisor.project.garment import Garment

STDOUT = "-"
PDF = ".pdf"
THERE = "there is a file of this name already; --replace overwrites it"
PAGE_STARTS, PDF_STARTS = b"<!doctype html", b"%pdf"
FORMS = ("--html", "--pdf", "--booklet", "--json", "--all", "--reasons", "--only")
Html = Annotated[
    str | None,
    typer.Option("--html", metavar="OUT", help="Write it as a page to print; - for stdout."),
]
Pdf = Annotated[
    str | None,
    typer.Option(
        "--pdf", metavar="OUT", help="Print it into a PDF file, by a browser that is here."
    ),
]
Booklet = Annotated[
    str | None,
    typer.Option(
        "--booklet",
        metavar="OUT",
        help="Write all that is printed as one booklet: sheet, order, shopping, label, tests; "
        "as a page, or as a PDF where OUT ends in .pdf.",
    ),
]
Paper = Annotated[
    str | None,
    typer.Option("--paper", help="The booklet's paper: a4 or letter; else as the units."),
]
Replace = Annotated[
    bool, typer.Option("--replace", help="Overwrite the page if it is there already.")
]


def booklet_page(answer: Answer, paper: str | None, garment: Garment) -> str:
    """Everything for the wall as one page to print, dated today, in the garment's colours.

    Raises:
        InputError: there is no such paper.
    """
    from advisor.render.printed.booklet import render_booklet

    size = paper or ("letter" if answer.units == "us" else "a4")
    colours = {name: cloth.colour for name, cloth in garment.cloths.items()}
    return render_booklet(answer, today(), size, colours)


def sheet_page(answer: Answer) -> str:
    """The sheet as a page to print."""
    from advisor.render.printed.html import render_html

    return render_html(answer)


def today() -> date:
    """The day where she is."""
    from datetime import datetime

    return datetime.now().astimezone().date()


def write_page(out: str, page: str, *, replace: bool) -> None:
    """Write a page into a file, or to stdout.

    Raises:
        InputError: there is a file of that name and it is not to be replaced, or the place
            cannot be written to.
    """
    from advisor.textio.files import write_whole

    text = visible(page)
    if out == STDOUT:
        print_text(text)
        return
    _check_over(out, PAGE_STARTS, replace=replace)
    _written(out, write_whole(Path(out), text, replace=replace))


def write_pdf(out: str, page: str, *, replace: bool) -> None:
    """Write a page as a PDF file.

    Raises:
        InputError: no browser here prints by itself, or it cannot be written there.
    """
    from advisor.textio.files import write_bytes
    from advisor.writing.pdf import pdf_of

    _check_over(out, PDF_STARTS, replace=replace)
    _written(out, write_bytes(Path(out), pdf_of(visible(page), today()), replace=replace))


def _written(out: str, notes: tuple[str, ...]) -> None:
    for note in notes:
        say(f"{out}: {note}")
    say(f"Written: {out}")


def _check_over(out: str, starts: bytes, *, replace: bool) -> None:
    """Refuse to write over a file unasked, or over what is no page: no project is lost for one.

    Raises:
        InputError: a file is there that does not begin as one written here does.
    """
    from advisor.errors import InputError

    if not Path(out).is_file():
        return  # none is there, or the writer says why; a pipe would be waited for in vain
    try:
        with Path(out).open("rb") as there:
            found = there.read(len(starts) + 3).removeprefix(b"\xef\xbb\xbf")
    except OSError:
        return  # the writer says why it cannot be written
    if not replace:
        raise InputError(f"{out}: {THERE}")
    if found and not found.lower().startswith(starts):
        raise InputError(
            f"{out}: what is there is no page or print of ours, so it is not overwritten; "
            "name another file"
        )


def check_pdf(out: str, *, replace: bool) -> None:
    """Refuse, before any work is done, a PDF that could not be printed or written in the end.

    Raises:
        InputError: it has no file, or one that is there already, or no browser here prints.
    """
    from advisor.errors import InputError
    from advisor.writing.pdf import must_print

    if out == STDOUT:
        raise InputError("a PDF goes into a file: name one")
    if not replace and Path(out).exists():
        raise InputError(f"{out}: {THERE}")
    must_print()


def check_alone(named: str, *others: object) -> None:
    """Refuse a page together with another form of the same answer.

    Args:
        named: the option of the page.
        others: what else was asked for.

    Raises:
        InputError: both are asked for.
    """
    from advisor.errors import InputError

    if any(others):
        others_named = ", ".join(form for form in FORMS if form != named)
        raise InputError(f"{named} goes with none of {others_named}")

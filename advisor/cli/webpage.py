"""The sheet as a page: into a file, whole or not at all, or to stdout."""

from __future__ import annotations

from pathlib import Path
from typing import TYPE_CHECKING, Annotated

import typer

from advisor.cli.output import print_text, say
from advisor.errors import visible

if TYPE_CHECKING:
    from advisor.answer.model.answer import Answer
    from advisor.answer.pipeline import Parts
    from advisor.knowledge.model import Knowledge
    from advisor.project.garment import Garment

STDOUT = "-"
Html = Annotated[
    str | None,
    typer.Option("--html", metavar="OUT", help="Write it as a page to print; - for stdout."),
]
Booklet = Annotated[
    str | None,
    typer.Option(
        "--booklet",
        metavar="OUT",
        help="Write all that is printed as one booklet: sheet, order, shopping, label, tests.",
    ),
]
Paper = Annotated[
    str | None,
    typer.Option("--paper", help="The booklet's paper: a4 or letter; else as the units."),
]
Replace = Annotated[
    bool, typer.Option("--replace", help="Overwrite the page if it is there already.")
]


def write_page(out: str, answer: Answer, *, replace: bool) -> None:
    """Write the sheet as a page.

    Raises:
        InputError: there is a file of that name and it is not to be replaced, or the place
            cannot be written to.
    """
    from advisor.render.printed.html import render_html

    _write(out, render_html(answer), replace=replace)


def write_booklet(
    out: str, answer: Answer, paper: str | None, garment: Garment, *, replace: bool
) -> None:
    """Write everything for the wall as one page to print, dated today, in the garment's colours.

    Raises:
        InputError: there is no such paper, or it cannot be written there.
    """
    from datetime import datetime

    from advisor.render.printed.booklet import render_booklet

    size = paper or ("letter" if answer.units == "us" else "a4")
    day = datetime.now().astimezone().date()
    colours = {name: cloth.colour for name, cloth in garment.cloths.items()}
    _write(out, render_booklet(answer, day, size, colours), replace=replace)


def with_label(parts: Parts, file: Path, known: Knowledge) -> Parts:
    """The parts of an answer with the label for the market of the project's units."""
    from dataclasses import replace as changed

    from advisor.answer.label import Asked
    from advisor.project.load import garment_of
    from advisor.project.stated import only_named
    from advisor.textio.yamlfile import read_yaml

    document = read_yaml(file)
    units = garment_of(document, known).units
    return changed(parts, label=Asked(None, units, only_named(document, known)))


def _write(out: str, page: str, *, replace: bool) -> None:
    from advisor.textio.files import write_whole

    text = visible(page)
    if out == STDOUT:
        print_text(text)
        return
    for note in write_whole(Path(out), text, replace=replace):
        say(f"{out}: {note}")
    say(f"Written: {out}")


def check_alone(html: str | None, *others: object) -> None:
    """Refuse a page together with another form of the same answer.

    Raises:
        InputError: both are asked for.
    """
    from advisor.errors import InputError

    if html is not None and any(others):
        raise InputError("--html goes with none of --json, --all, --reasons, --only and --booklet")

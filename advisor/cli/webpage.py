"""The sheet as a page: into a file, whole or not at all, or to stdout."""

from __future__ import annotations

from pathlib import Path
from typing import TYPE_CHECKING, Annotated

import typer

from advisor.cli.output import print_text, say
from advisor.errors import visible

if TYPE_CHECKING:
    from advisor.answer.model.answer import Answer

STDOUT = "-"
Html = Annotated[
    str | None,
    typer.Option("--html", metavar="OUT", help="Write it as a page to print; - for stdout."),
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
    from advisor.textio.files import write_whole

    text = visible(render_html(answer))
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
        raise InputError("--html goes with none of --json, --all, --reasons and --only")

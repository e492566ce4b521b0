"""`advisor learn price` and `advisor learn took`: what she charges by, and what jobs took her."""

from __future__ import annotations

from collections.abc import Callable
from pathlib import Path
from typing import TYPE_CHECKING, Annotated

import typer

from advisor.cli import common, talk

if TYPE_CHECKING:
    from advisor.knowledge.model import Knowledge


def price(
    name: Annotated[
        str,
        typer.Argument(help="A cloth, a notion, reel, cone, hour, margin or currency."),
    ],
    amount: Annotated[str, typer.Argument(help='"18.50 per m", "9 per yd", "3 each", EUR.')],
) -> None:
    """Keep a price for every project: of cloth, thread, notions, or an hour of your work."""
    from advisor.errors import InputError
    from advisor.knowledge.pricing import read_price
    from advisor.overlay.learning_quote import with_entry, with_line
    from advisor.project.quoting import PLAIN

    if name in PLAIN and name != "hour":
        _keep(lambda text: with_line(text, name, amount))
        return
    try:
        read = read_price(amount)
    except ValueError as error:
        raise InputError(str(error)) from None
    if name == "hour":
        _keep(lambda text: with_line(text, name, read.amount))
    else:
        _keep(lambda text: with_entry(text, "prices", name, amount))


def took(
    file: Annotated[Path, typer.Argument(help="The project of a garment that you finished.")],
    time: Annotated[str, typer.Argument(help='What it took in all: "14 h", "9 h 30 min".')],
) -> None:
    """Keep what a finished garment took, so that the next estimate is corrected by it."""
    from advisor.answer.pipeline import Parts, answer
    from advisor.errors import InputError
    from advisor.overlay.learning_quote import with_row
    from advisor.project.load import load_project
    from advisor.project.quoting import job_minutes

    try:
        minutes = job_minutes(time)
    except ValueError as error:
        raise InputError(f"{error}; write 14 h or 9 h 30 min") from None
    known = common.knowledge()
    told = answer(load_project(file, known), known, Parts(order=True, quote=True))
    if told.quote is None or not told.quote.minutes:
        raise InputError("no hours can be reckoned for this project")
    row = {
        "garment": told.garment,
        "reckoned": f"{told.quote.minutes:.0f} min",
        "took": f"{minutes:.0f} min",
    }
    _keep(lambda text: with_row(text, "finished", row))
    ratio = minutes / told.quote.minutes
    talk.tell(f"It took {ratio:.2f} times what is reckoned; the next quote counts that.")


def _keep(change: Callable[[str | None], str]) -> None:
    from advisor.knowledge.mine import QUOTE

    kept(QUOTE, change, common.knowledge())


def kept(
    file: str, change: Callable[[str | None], str], known: Knowledge, more: str = "", lost: str = ""
) -> Knowledge:
    """Change a file of her own folder and say so; the knowledge with the change in it.

    `more` is said behind the name of the file, `lost` is what of her words is not in it.
    """
    from advisor.overlay.cache import own_folder
    from advisor.overlay.learning import keep

    after, notes = keep(own_folder(), file, change, known.left_out)
    path = own_folder() / file
    talk.tell(f"Written: {path}{more}")
    for note in filter(None, (*notes, lost)):
        talk.tell(f"{path}: {note}")
    return after

"""`advisor ask FABRIC...`: how to handle a combination of cloths."""

from __future__ import annotations

from typing import Annotated

import typer

from advisor.cli import common, completing
from advisor.cli.question import tell
from advisor.cli.webpage import Html, Replace, check_alone, sheet_page, write_page


def ask(
    fabrics: Annotated[
        list[str],
        typer.Argument(
            help='A cloth each: "nylon organza", "cotton 97 elastane 3 denim 340 g/m2"',
            autocompletion=completing.cloths,
        ),
    ],
    *,
    json: common.Json = False,
    more: Annotated[
        bool, typer.Option("--more", help="Print also why, and on whose word.")
    ] = False,
    everything: Annotated[
        bool, typer.Option("--all", help="Print all that can be done and tried.")
    ] = False,
    html: Html = None,
    replace: Replace = False,
    units: common.Units = None,
) -> None:
    """Say how to handle some cloths together, layer upon layer in the order given."""
    if html is not None:
        check_alone("--html", json, more, everything)
    if html is not None:
        _page(fabrics, html, replace=replace, units=units)
        return
    code = tell(fabrics, json=json, more=more, everything=everything, units=units)
    if code:
        raise typer.Exit(code)


def _page(fabrics: list[str], html: str, *, replace: bool, units: str | None) -> None:
    """The same answer as a page to print."""
    from advisor.answer.pipeline import WHOLE, answer
    from advisor.project.quick import asked_garment

    known = common.knowledge()
    garment = common.with_units(asked_garment(fabrics, known), units)
    told = answer(garment, known, WHOLE)
    write_page(html, sheet_page(told), replace=replace)
    common.leave(told)

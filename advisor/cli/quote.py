"""`advisor quote FILE`: what a garment costs in things and in hours, for her and for a customer."""

from __future__ import annotations

from pathlib import Path
from typing import Annotated

import typer

from advisor.cli import common
from advisor.cli.webpage import Html, Replace, check_alone, today, write_page


def quote(
    file: Annotated[Path, typer.Argument(help="A project file.")],
    *,
    json: common.Json = False,
    customer: Annotated[
        bool, typer.Option("--customer", help="Print what a customer is handed.")
    ] = False,
    html: Html = None,
    replace: Replace = False,
    units: common.Units = None,
) -> None:
    """Reckon what a garment costs in cloth, thread, notions and hours, with its range.

    Prices stand under `quote:` in the project, or in your own folder: advisor learn price.
    """
    from advisor.answer.pipeline import Parts, answer
    from advisor.project.load import load_project

    if html is not None:
        check_alone("--html", json, customer)
    known = common.knowledge()
    garment = common.with_units(load_project(file, known), units)
    told = answer(garment, known, Parts(order=True, quote=True, file=file.name))
    day = today()
    if html is not None:
        from advisor.render.quote_html import render_quote_page

        write_page(html, render_quote_page(told, day), replace=replace)
    elif json:
        common.print_answer(told)
    elif customer:
        from advisor.render.quote_text import render_customer

        common.print_text(render_customer(told, day))
    else:
        from advisor.render.quote_text import render_quote

        common.print_text(render_quote(told))
    common.leave(told)

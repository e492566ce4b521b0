"""`advisor label FILE`: what the label of a garment that is sold may honestly say."""

from __future__ import annotations

from pathlib import Path
from typing import Annotated

import typer

from advisor.cli import common


def label(
    file: Annotated[Path, typer.Argument(help="A project file.")],
    json: common.Json = False,
    market: Annotated[
        str | None,
        typer.Option("--market", help="eu or us; without it, the one of the project's units."),
    ] = None,
    units: common.Units = None,
) -> None:
    """Write the fibre content and care for a label; ends with 1 while it cannot be honest."""
    from advisor.answer.core import report
    from advisor.answer.label import Asked, add_label
    from advisor.decide.advise import advise
    from advisor.project.load import garment_of
    from advisor.project.stated import only_named
    from advisor.textio.yamlfile import read_yaml

    known = common.knowledge()
    document = read_yaml(file)
    garment = garment_of(document, known)
    advice = advise(common.with_units(garment, units), known)
    data = report(advice, known)
    about = Asked(market, garment.units, only_named(document, known))
    add_label(data, advice, known, about)
    if json:
        common.print_json(data)
    else:
        from advisor.render.label_text import render_label

        common.print_text(render_label(data))
    if not data["label"]["ready"]:
        raise typer.Exit(1)

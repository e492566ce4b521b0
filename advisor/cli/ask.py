"""`advisor ask FABRIC...`: how to handle a combination of cloths."""

from __future__ import annotations

from typing import Annotated

import typer

from advisor.cli import common
from advisor.cli.question import answer


def ask(
    fabrics: Annotated[
        list[str],
        typer.Argument(help='A cloth each: "nylon organza", "cotton 97 elastane 3 denim 340 g/m2"'),
    ],
    json: common.Json = False,
    everything: Annotated[
        bool, typer.Option("--all", help="Print all that can be done and tried.")
    ] = False,
    units: common.Units = None,
) -> None:
    """Say how to handle some cloths together, layer upon layer in the order given."""
    code = answer(fabrics, json=json, everything=everything, units=units)
    if code:
        raise typer.Exit(code)

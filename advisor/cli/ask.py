"""`advisor ask FABRIC...`: how to handle a combination of cloths."""

from __future__ import annotations

from typing import Annotated

import typer

from advisor.cli import common


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
    from advisor.engine.advise import advise
    from advisor.project.quick import quick_garment
    from advisor.sheet.report import report

    known = common.knowledge()
    garment = common.with_units(quick_garment(list(fabrics), known), units)
    advice = advise(garment, known)
    data = report(advice, known)
    if json:
        common.print_json(data)
    else:
        from advisor.sheet.detailed import render_detailed

        common.print_text(render_detailed(
            data, reasons=True, everything=everything, title="how to handle it"
        ))
    common.leave(advice)

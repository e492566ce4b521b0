"""`advisor iron FILE|FABRIC...`: how hot the iron may be across the layers."""

from __future__ import annotations

from typing import Annotated

import typer

from advisor.cli import common


def iron(
    what: Annotated[
        list[str], typer.Argument(help="A project file, or cloths from the iron downwards.")
    ],
    json: common.Json = False,
    units: common.Units = None,
) -> None:
    """Show what every layer bears, what they have in common, and how to press them together."""
    from advisor.answer.core import report
    from advisor.answer.heat import add_heat, heat_of
    from advisor.answer.iron import iron_report
    from advisor.decide.advise import advise

    known = common.knowledge()
    garment = common.with_units(common.garment_of(what, known), units)
    advice, heat = heat_of(advise(garment, known), known)
    data = report(advice, known)
    add_heat(data, heat, garment, known)
    rows = iron_report(advice.judgement, known)
    if json:
        common.print_json({**data, "iron": rows})
    else:
        from advisor.render.answers import render_iron_answer

        common.print_text(render_iron_answer(data, rows, known))
    common.leave(advice)

"""`advisor why FILE PLACE ASPECT`: the tree of reasons of one answer."""

from __future__ import annotations

from typing import Annotated

import typer

from advisor.cli import common


def why(
    file: Annotated[str, typer.Argument(help="A project file, or one phrase.")],
    place: Annotated[
        str, typer.Argument(help="A seam, a cloth, the garment, or a step of the order.")
    ],
    aspect: Annotated[
        str, typer.Argument(help="An aspect, such as press.temperature; order for a step.")
    ],
    json: common.Json = False,
    units: common.Units = None,
) -> None:
    """Show why an answer is what it is: each claim, its facts, and on whose word."""
    from advisor.answer.core import report
    from advisor.decide.advise import advise
    from advisor.render.reasons import pick_verdict, render_reasons

    known = common.knowledge()
    garment = common.with_units(common.garment_of([file], known), units)
    if aspect == "order":
        from advisor.render.order_why import render_why_order, why_order

        told = why_order(advise(garment, known), place, known)
        if json:
            common.print_json(told)
        else:
            common.print_text(render_why_order(told))
        return
    data = report(advise(garment, known), known)
    verdict = pick_verdict(data, place, aspect, known)
    if json:
        common.print_json(
            {
                "schema": data["schema"],
                "garment": data["garment"],
                "verdict": verdict,
                "sources": data["sources"],
            }
        )
    else:
        lines = render_reasons(verdict, known)
        common.print_text("\n".join(lines) + "\n")

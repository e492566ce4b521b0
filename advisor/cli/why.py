"""`advisor why FILE PLACE ASPECT`: the tree of reasons of one answer."""

from __future__ import annotations

from typing import Annotated

import typer

from advisor.cli import common, completing


def why(
    file: Annotated[str, typer.Argument(help="A project file, or one phrase.")],
    place: Annotated[
        str,
        typer.Argument(
            help="A seam, a cloth, the garment, or a step of the order.",
            autocompletion=completing.places,
        ),
    ],
    aspect: Annotated[
        str,
        typer.Argument(
            help="What is printed: iron, needle, 'needle size', press.temperature; made for the "
            "way of making; order for a step. `advisor explain aspects` lists all.",
            autocompletion=completing.aspects,
        ),
    ],
    json: common.Json = False,
    units: common.Units = None,
) -> None:
    """Show why an answer is what it is: each claim, its facts, and on whose word."""
    from advisor.answer.pipeline import Parts, decide, tell
    from advisor.records import as_data
    from advisor.render.method_why import asks_method, place_named, render_method
    from advisor.render.reasons import pick_verdicts, render_reasons

    known = common.knowledge()
    garment = common.with_units(common.garment_of([file], known), units)
    decided = decide(garment, known, Parts())
    told = tell(decided, known, Parts())
    if aspect == "order":
        from advisor.render.order_why import render_why_order, why_order

        step = why_order(decided.advice, place, known)
        if json:
            common.print_json(step)
        else:
            common.print_text(render_why_order(step))
    elif asks_method(aspect):
        seam = place_named(told, place)
        if json:
            common.print_json(as_data(seam))
        else:
            methods = decided.work.methods if decided.work is not None else {}
            said = next(s.method for s in garment.seams if s.name == seam.name)
            lines = render_method(seam, methods[seam.name], said, known)
            common.print_text("\n".join(lines) + "\n")
    elif json:
        verdicts = pick_verdicts(told, place, aspect, known)
        common.print_json(
            {
                "schema": told.schema,
                "garment": told.garment,
                "verdict": as_data(verdicts[0]),
                "verdicts": [as_data(verdict) for verdict in verdicts],
                "sources": as_data(told.sources),
            }
        )
    else:
        trees = [render_reasons(v, known) for v in pick_verdicts(told, place, aspect, known)]
        common.print_text("\n\n".join("\n".join(lines) for lines in trees) + "\n")
    common.leave(told)

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
    from advisor.answer.pipeline import Parts, answer

    known = common.knowledge()
    garment = common.with_units(common.garment_of(what, known), units)
    told = answer(garment, known, Parts(heat=True, ways=True, iron=True))
    if json:
        common.print_answer(told)
    else:
        from advisor.render.answers import render_iron_answer

        common.print_text(render_iron_answer(told, known))
    common.leave(told)

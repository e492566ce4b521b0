"""`advisor iron FILE|FABRIC...`: how hot the iron may be across the layers."""

from __future__ import annotations

from typing import Annotated

import typer

from advisor.cli import common
from advisor.cli.output import print_fitted


def iron(
    what: Annotated[
        list[str],
        typer.Argument(help="A project file and perhaps one place of it, or cloths, top first."),
    ],
    *,
    json: common.Json = False,
    everything: Annotated[
        bool, typer.Option("--all", help="Print every layer, every way and the heat inside.")
    ] = False,
    units: common.Units = None,
) -> None:
    """Show how the iron is set, place by place; with a place's name, that place as at the board."""
    from advisor.answer.pipeline import Parts, answer

    known = common.knowledge()
    cloths, place = _asked(what)
    garment = common.with_units(common.garment_of(cloths, known), units)
    told = answer(garment, known, Parts(heat=True, ways=json or everything, iron=True))
    if json:
        common.print_answer(told)
    elif everything:
        from advisor.render.answers import render_iron_answer

        common.print_text(render_iron_answer(told))
    else:
        from advisor.render.screen.iron import iron_screen_text

        print_fitted(lambda width, colour: iron_screen_text(told, place, width, colour=colour))
    common.leave(told)


def _asked(what: list[str]) -> tuple[list[str], str]:
    """The file or the cloths, and the place of the file that is asked for."""
    if len(what) > 1 and common.looks_like_file(what[0]):
        return what[:1], " ".join(what[1:])
    return what, ""

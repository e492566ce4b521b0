"""`advisor check FILE`: the conflicts of a project, and taking a remedy into it."""

from __future__ import annotations

from dataclasses import replace
from pathlib import Path
from typing import Annotated

import typer

from advisor.cli import common
from advisor.cli.output import say


def check(
    file: Annotated[Path, typer.Argument(help="A project file.")],
    json: common.Json = False,
    take: Annotated[
        list[str] | None,
        typer.Option(
            "--take",
            help="Write remedies into the project: 2, or 1,3.2 (the second of 3), or all. The "
            "numbers are those of the last printing; taking changes them.",
        ),
    ] = None,
    units: common.Units = None,
) -> None:
    """List what cannot be reconciled, with what to do instead; ends with 1 when there is any."""
    from advisor.answer.pipeline import Parts, decide, tell
    from advisor.project.load import load_project

    known, parts, taken = common.knowledge(), Parts(file=str(file)), None
    if take:
        from advisor.writing.remedies import take_remedies

        found = take_remedies(file, ",".join(take), known)
        taken = found.lines
        for note in (*found.notes, *found.numbers):
            say(note)
    garment = common.with_units(load_project(file, known), units)
    told = replace(tell(decide(garment, known, parts), known, parts), taken=taken)
    if json:
        common.print_answer(told)
    else:
        from advisor.render.answers import render_check

        common.print_text(render_check(told))
    common.leave(told)

"""`advisor order FILE`: what is done first, what next, with the fewest changes of set-up."""

from __future__ import annotations

from pathlib import Path
from typing import Annotated

import typer

from advisor.cli import common
from advisor.cli.output import say


def order(
    file: Annotated[Path, typer.Argument(help="A project file.")],
    *,
    json: common.Json = False,
    plain: Annotated[
        bool, typer.Option("--plain", help="The customary order, seam by seam, and its price.")
    ] = False,
    sitting: Annotated[
        str | None, typer.Option("--sitting", help="Cut the work into sittings of so long: 90min.")
    ] = None,
    tick: Annotated[
        list[str] | None, typer.Option("--tick", help="Tick a step off in the project file.")
    ] = None,
    untick: Annotated[
        list[str] | None, typer.Option("--untick", help="Take the tick of a step away.")
    ] = None,
    units: common.Units = None,
) -> None:
    """Print the whole order of work as a checklist, from shrinking the cloth to the label.

    A project may say `order:` with add, drop, tie, pin, after, costs and sitting, and `done:`.
    """
    from advisor.answer.pipeline import Parts, answer
    from advisor.project.load import load_project

    known = common.knowledge()
    parts = Parts(order=True, plain=plain, sitting=_minutes(sitting), file=file.name)
    if tick or untick:
        from advisor.writing.ticks import tick_steps

        for note in tick_steps(file, tick or [], untick or [], known):
            say(f"{file}: {note}")
    told = answer(common.with_units(load_project(file, known), units), known, parts)
    if told.work is None:
        from advisor.errors import InputError

        raise InputError("the knowledge holds no operations.yaml, so there is no order of work")
    if json:
        common.print_answer(told)
    else:
        from advisor.render.order_text import render_order

        common.print_text(render_order(told))
    common.leave(told)


def _minutes(text: str | None) -> float | None:
    from advisor.errors import InputError, Problem
    from advisor.project.wishes import minutes_of

    if text is None:
        return None
    try:
        return minutes_of(text)
    except (ValueError, KeyError):
        raise InputError(
            Problem(f"'{text}' is no length of a sitting", None, "90min, 1.5h or 120")
        ) from None

"""`advisor order FILE`: what is done first, what next, with the fewest changes of set-up."""

from __future__ import annotations

from pathlib import Path
from typing import TYPE_CHECKING, Annotated

import typer

from advisor.cli import common
from advisor.cli.output import say

if TYPE_CHECKING:
    from advisor.claims.judgement import Advice
    from advisor.knowledge.model import Knowledge


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
    from advisor.answer.order import order_of_garment
    from advisor.decide.advise import advise
    from advisor.project.load import load_project

    known = common.knowledge()
    length = _minutes(sitting)
    advice = advise(common.with_units(load_project(file, known), units), known)
    if tick or untick:
        _tick(file, tick or [], untick or [], advice, known)
        advice = advise(common.with_units(load_project(file, known), units), known)
    data = {
        "schema": "advisor.answer/1",
        "garment": advice.judgement.garment.name,
        **order_of_garment(advice, known, plain=plain, sitting=length),
    }
    if "order" not in data:
        from advisor.errors import InputError

        raise InputError("the knowledge holds no operations.yaml, so there is no order of work")
    if json:
        common.print_json(data)
    else:
        from advisor.render.order_text import render_order

        common.print_text(render_order(data))
    if data["order_conflicts"] or any(not pin["honoured"] for pin in data["pins"]):
        raise typer.Exit(1)
    common.leave(advice)


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


def _tick(file: Path, tick: list[str], untick: list[str], advice: Advice, known: Knowledge) -> None:
    """Write the ticks into the project file; a name that is no step is refused first."""
    from advisor.errors import InputError
    from advisor.order.work import order_of
    from advisor.project.ticking import tick_file
    from advisor.project.wishes import unknown_step

    steps = list(order_of(advice, known).order)
    for name in tick:
        if name not in steps:
            raise InputError(unknown_step(name, steps))
    before = advice.judgement.garment.wishes.done
    for name in untick:
        if name not in before:
            raise InputError(
                unknown_step(name, list(before)).replace("step is called", "ticked step is called")
            )
    for note in tick_file(file, tick, untick):
        say(f"{file}: {note}")

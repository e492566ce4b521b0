"""`advisor order FILE`: what is done first, what next, with the fewest changes of set-up."""

from __future__ import annotations

from pathlib import Path
from typing import TYPE_CHECKING, Annotated

import typer
from msgspec.structs import replace

from advisor.cli import common, completing
from advisor.cli.output import say

if TYPE_CHECKING:
    from advisor.answer.pipeline import Parts
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
        list[str] | None,
        typer.Option(
            "--tick",
            help="Tick off a step, by number, name or words: 21, 'join side'.",
            autocompletion=completing.steps,
        ),
    ] = None,
    untick: Annotated[
        list[str] | None, typer.Option("--untick", help="Take a tick away again.")
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

        ticked, away, done = _named(file, tick or [], untick or [], known, parts)
        for note in tick_steps(file, ticked, away, known):
            say(f"{file}: {note}")
        before = [name for name in ticked if name in done]
        ticked = [name for name in ticked if name not in done]
        for what, names, typed in (
            ("already ticked", before, []),
            ("ticked", ticked, tick),
            ("no longer ticked", away, untick),
        ):
            if names and names != typed:
                say(f"{what}: {', '.join(names)}")
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


def _named(
    file: Path, tick: list[str], untick: list[str], known: Knowledge, parts: Parts
) -> tuple[list[str], list[str], tuple[str, ...]]:
    """The steps that were typed, those to take a tick from, and what was ticked before.

    A number is the one that this command prints, which no tick changes.
    """
    from advisor.answer.pipeline import answer
    from advisor.errors import InputError
    from advisor.explain.typed_steps import steps_named
    from advisor.project.load import load_project

    garment = load_project(file, known)

    def steps_of(*, plain: bool) -> dict[str, str]:
        work = answer(garment, known, replace(parts, plain=plain)).work
        rows = sorted(work.order, key=lambda row: row.number) if work else []
        return {row.step: row.does for row in rows}

    steps = steps_of(plain=False)
    before = garment.wishes.done
    gone = {name: name for name in before if name not in steps}
    away = steps_named(untick, {**steps, **gone}, lambda: steps_of(plain=True))
    if never := [name for name in away if name not in before]:
        raise InputError(f"not ticked yet, so no tick is taken away: {', '.join(never)}")
    return steps_named(tick, steps, lambda: steps_of(plain=True)), away, before


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

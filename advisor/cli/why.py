"""`advisor why FILE PLACE ASPECT`: the tree of reasons of one answer."""

from __future__ import annotations

from typing import TYPE_CHECKING, Annotated

import typer

from advisor.cli import common, completing

if TYPE_CHECKING:
    from advisor.answer.model.answer import Answer
    from advisor.answer.pipeline import Decided
    from advisor.knowledge.model import Knowledge


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
    from advisor.explain.method_why import asks_method

    known = common.knowledge()
    garment = common.with_units(common.garment_of([file], known), units)
    decided = decide(garment, known, Parts())
    told = tell(decided, known, Parts())
    if aspect == "order":
        data, text = _step(decided, place, known)
    elif asks_method(aspect):
        data, text = _making(decided, told, place, known)
    else:
        data, text = _verdicts(told, place, aspect, known)
    if json:
        common.print_json(data)
    else:
        common.print_text(text)
    common.leave(told)


def _step(decided: Decided, place: str, known: Knowledge) -> tuple[object, str]:
    """Why a step of the order of work stands where it stands."""
    from advisor.answer.stepwhy import why_step
    from advisor.explain.order_why import render_why_order, step_typed
    from advisor.order.work import order_of
    from advisor.records import as_data

    work = decided.work or order_of(decided.advice, known)
    numbered = sorted(work.order, key=work.numbers.__getitem__)
    step = step_typed(place, {name: work.tasks[name].step.does for name in numbered})
    why = why_step(decided.advice.judgement.garment.name, work, step, known)
    return as_data(why), render_why_order(why)


def _making(decided: Decided, told: Answer, place: str, known: Knowledge) -> tuple[object, str]:
    """Why a place is made the way it is."""
    from advisor.explain.method_why import place_named, render_method
    from advisor.records import as_data

    seam = place_named(told, place)
    methods = decided.work.methods if decided.work is not None else {}
    said = next(s.method for s in decided.advice.judgement.garment.seams if s.name == seam.name)
    return as_data(seam), "\n".join(render_method(seam, methods[seam.name], said, known)) + "\n"


def _verdicts(told: Answer, place: str, aspect: str, known: Knowledge) -> tuple[object, str]:
    """Why what is decided is what it is, each claim with its facts."""
    from advisor.explain.reasons import pick_verdicts, render_reasons
    from advisor.records import as_data

    verdicts = pick_verdicts(told, place, aspect, known)
    data = {
        "schema": told.schema,
        "garment": told.garment,
        "verdict": as_data(verdicts[0]),
        "verdicts": as_data(verdicts),
        "sources": as_data(told.sources),
    }
    return data, "\n\n".join("\n".join(render_reasons(v, known)) for v in verdicts) + "\n"

"""`advisor sheet FILE`: the handling sheet of a project."""

from __future__ import annotations

from pathlib import Path
from typing import Annotated, Any

import typer

from advisor.cli import common

SECTIONS = (
    "conflicts", "cautions", "cloths", "seams", "garment", "tests", "unknowns", "shopping",
    "cloth", "thread", "kit",
)  # fmt: skip


def sheet(
    file: Annotated[Path, typer.Argument(help="A project file.")],
    json: common.Json = False,
    reasons: Annotated[bool, typer.Option(help="Print under each line why it is so.")] = False,
    everything: Annotated[
        bool, typer.Option("--all", help="Print all that can be done and tried.")
    ] = False,
    only: Annotated[
        str | None, typer.Option(help=f"Print one section: {', '.join(SECTIONS)}.")
    ] = None,
    units: common.Units = None,
) -> None:
    """Print the handling sheet of a project: what can go wrong, then what to set, then why."""
    from advisor.engine.advise import advise
    from advisor.project.load import load_project
    from advisor.sheet.heat import add_heat, heat_of
    from advisor.sheet.order import add_order
    from advisor.sheet.report import report

    known = common.knowledge()
    garment = common.with_units(load_project(file, known), units)
    advice, heat = heat_of(advise(garment, known), known, full=json)
    data = report(advice, known, shopping=True)
    add_heat(data, heat, garment, known)
    add_order(data, advice, known, file.name)
    if json:
        common.print_json(data)
    elif only is not None:
        from advisor.sheet.only import render_only

        common.print_text(render_only(data, _section(only)))
    else:
        common.print_text(_text(data, reasons=reasons, everything=everything))
    common.leave(advice)


def _section(word: str) -> str:
    """The name of a section.

    Raises:
        InputError: there is none of that name.
    """
    from advisor.errors import InputError, Problem, nearest

    if word not in SECTIONS:
        known = f"one of {', '.join(SECTIONS)}"
        raise InputError(Problem(f"no section '{word}'", None, known, nearest(word, SECTIONS)))
    return word


def _text(data: dict[str, Any], *, reasons: bool, everything: bool) -> str:
    """Two close pages, unless more is asked for."""
    if reasons or everything:
        from advisor.sheet.detailed import render_detailed

        return render_detailed(data, reasons=reasons, everything=everything)
    from advisor.sheet.compact import render_sheet

    return render_sheet(data)

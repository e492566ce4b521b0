"""`advisor sheet FILE`: the handling sheet of a project."""

from __future__ import annotations

from pathlib import Path
from typing import Annotated, Any

import typer

from advisor.cli import common
from advisor.cli.webpage import Html, Replace, check_alone, write_page

SECTIONS = (
    "conflicts",
    "cautions",
    "cloths",
    "seams",
    "garment",
    "tests",
    "unknowns",
    "shopping",
    "cloth",
    "thread",
    "kit",
)


def sheet(
    file: Annotated[Path, typer.Argument(help="A project file.")],
    *,
    json: common.Json = False,
    reasons: Annotated[bool, typer.Option(help="Print under each line why it is so.")] = False,
    everything: Annotated[
        bool, typer.Option("--all", help="Print all that can be done and tried.")
    ] = False,
    only: Annotated[
        str | None, typer.Option(help=f"Print one section: {', '.join(SECTIONS)}.")
    ] = None,
    html: Html = None,
    replace: Replace = False,
    units: common.Units = None,
) -> None:
    """Print the handling sheet of a project: what can go wrong, then what to set, then why."""
    from advisor.answer.pipeline import whole_answer
    from advisor.project.load import load_project

    check_alone(html, json, reasons, everything, only)
    known = common.knowledge()
    garment = common.with_units(load_project(file, known), units)
    advice, data = whole_answer(garment, known, full=json, file=file.name)
    if html is not None:
        write_page(html, data, advice, known, replace=replace)
    elif json:
        common.print_json(data)
    elif only is not None:
        from advisor.render.printed.only import render_only

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
        from advisor.render.printed.detailed import render_detailed

        return render_detailed(data, reasons=reasons, everything=everything)
    from advisor.render.printed.compact import render_sheet

    return render_sheet(data)

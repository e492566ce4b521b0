"""`advisor sheet FILE`: the handling sheet of a project."""

from __future__ import annotations

from pathlib import Path
from typing import Annotated, Any

import typer

from advisor.cli import common


def sheet(
    file: Annotated[Path, typer.Argument(help="A project file.")],
    json: common.Json = False,
    reasons: Annotated[bool, typer.Option(help="Print under each line why it is so.")] = False,
    everything: Annotated[
        bool, typer.Option("--all", help="Print all that can be done and tried.")
    ] = False,
    units: common.Units = None,
) -> None:
    """Print the handling sheet of a project: what can go wrong, then what to set, then why."""
    from advisor.engine.advise import advise
    from advisor.project.load import load_project
    from advisor.sheet.report import report

    known = common.knowledge()
    garment = common.with_units(load_project(file, known), units)
    advice = advise(garment, known)
    data = report(advice, known)
    if json:
        common.print_json(data)
    else:
        common.print_text(_text(data, reasons=reasons, everything=everything))
    common.leave(advice)


def _text(data: dict[str, Any], *, reasons: bool, everything: bool) -> str:
    """Two close pages, unless more is asked for."""
    if reasons or everything:
        from advisor.sheet.detailed import render_detailed

        return render_detailed(data, reasons=reasons, everything=everything)
    from advisor.sheet.compact import render_sheet

    return render_sheet(data)

"""`advisor check FILE`: the conflicts of a project and nothing else."""

from __future__ import annotations

from pathlib import Path
from typing import Annotated

import typer

from advisor.cli import common


def check(
    file: Annotated[Path, typer.Argument(help="A project file.")],
    json: common.Json = False,
    units: common.Units = None,
) -> None:
    """List what cannot be reconciled, with what to do instead; ends with 1 when there is any."""
    from advisor.answer.core import report
    from advisor.answer.heat import with_heat_clashes
    from advisor.answer.order import order_of_garment
    from advisor.decide.advise import advise
    from advisor.project.load import load_project

    known = common.knowledge()
    garment = common.with_units(load_project(file, known), units)
    advice = with_heat_clashes(advise(garment, known), known)
    data = report(advice, known)
    order = order_of_garment(advice, known).get("order_conflicts", [])
    if json:
        data["order_conflicts"] = order
        wanted = ("schema", "garment", "units", "conflicts", "order_conflicts", "sources")
        common.print_json({key: data[key] for key in wanted})
    else:
        from advisor.render.answers import render_conflicts
        from advisor.render.order_text import render_cycles

        common.print_text(render_conflicts(data) + render_cycles(order))
    if order:
        raise typer.Exit(1)
    common.leave(advice)

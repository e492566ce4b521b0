"""`advisor explain ID`: everything known about one entry."""

from __future__ import annotations

from typing import Annotated

import typer

from advisor.cli import common, completing


def explain(
    name: Annotated[
        str,
        typer.Argument(
            help="A cloth, notion, fibre, rule, source, aspect, trade word, method or place; or "
            "words, aspects, methods, places, rules, fibres or sources for a list.",
            autocompletion=completing.explained,
        ),
    ] = "",
    schema: Annotated[
        str | None,
        typer.Option("--schema", help="Print the JSON Schema of a form: project, fabric, rule…"),
    ] = None,
    json: common.Json = False,
    units: common.Units = None,
) -> None:
    """Show everything known about an entry, with all published values and where they disagree."""
    if schema is not None:
        from advisor.answer.forms import json_schema

        common.print_json(json_schema(schema, common.knowledge()))
        return
    if not name:
        raise typer.BadParameter("what to explain is missing")
    from advisor.explain.about import explain as tell

    lines, data = tell(name, common.knowledge(), "us" if units == "us" else "metric")
    if json:
        common.print_json({"schema": "advisor.explain/1", **data})
    else:
        common.print_text("\n".join(lines) + "\n")

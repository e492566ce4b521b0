"""`advisor schema NAME`: the JSON Schema of an answer, a project file or a knowledge file."""

from __future__ import annotations

from typing import Annotated

import typer

from advisor.cli import common


def schema(
    name: Annotated[
        str,
        typer.Argument(help="answer, project, fabric, notion, rule, order, source, aspect …"),
    ],
) -> None:
    """Print the JSON Schema of what `--json` writes, or of a file that you write."""
    from advisor.answer.forms import json_schema

    common.print_json(json_schema(name, common.knowledge()))

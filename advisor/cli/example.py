"""`advisor example NAME`: a whole project to try, copied beside you."""

from __future__ import annotations

from pathlib import Path
from typing import Annotated

import typer

from advisor.cli import common, completing
from advisor.cli.webpage import Replace


def example(
    name: Annotated[
        str,
        typer.Argument(
            help="Which one; without a name they are listed.", autocompletion=completing.examples
        ),
    ] = "",
    replace: Replace = False,
) -> None:
    """Copy one of the example projects into this folder, to try every command on."""
    from advisor.errors import InputError, Problem, nearest
    from advisor.knowledge.place import knowledge_folder
    from advisor.textio.files import write_whole

    found = {path.stem: path for path in (knowledge_folder() / "examples").glob("*.yaml")}
    if not name:
        common.print_text("".join(f"{stem}\n" for stem in sorted(found)))
        return
    wanted = name.removesuffix(".yaml").strip().casefold().replace(" ", "-")
    if wanted not in found:
        near = nearest(wanted, list(found))
        raise InputError(
            Problem(f"no example '{name}'", None, f"one of {', '.join(sorted(found))}", near)
        )
    out = Path(f"{wanted}.yaml")
    write_whole(out, found[wanted].read_text(encoding="utf-8"), replace=replace)
    common.print_text(f"{out}\n")

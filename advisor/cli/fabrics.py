"""`advisor fabrics [WORD]`: which cloths the advisor knows."""

from __future__ import annotations

from typing import Annotated

import typer

from advisor.cli import common, completing


def fabrics(
    word: Annotated[
        str,
        typer.Argument(
            help="A name, alias, family, structure, trait or fibre.",
            autocompletion=completing.cloths,
        ),
    ] = "",
    json: common.Json = False,
) -> None:
    """List the cloths and notions that a word fits, or all of them."""
    from advisor.answer.catalogue import search
    from advisor.errors import InputError, Problem, nearest, shown
    from advisor.knowledge.names import plain_name
    from advisor.render.layout import row

    known = common.knowledge()
    found = search(word, known)
    if not found:
        names = [*known.names, *known.fibre_names, *known.traits]
        near = tuple(n for n in nearest(word, names) if plain_name(n) != plain_name(word))
        expected = "a name, a family, a trait or a fibre; `advisor fabrics` lists every cloth"
        raise InputError(Problem(f"no cloth fits {shown(word)}", None, expected, near))
    if json:
        rows = [
            {"id": e.id, "name": e.name, "family": e.family or e.kind, "fits": how}
            for e, how in found
        ]
        common.print_json({"schema": "advisor.fabrics/1", "fabrics": rows})
        return
    lines = []
    for entry, how in found:
        also = f"; also {', '.join(entry.also[:4])}" if entry.also else ""
        fits = f" ({how})" if how not in ("name", "") and not how.startswith("name") else ""
        lines += row(entry.name, f"{entry.family or entry.kind}{fits}{also}", 2, 30)
    common.print_text("\n".join(lines) + "\n")

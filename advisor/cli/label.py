"""`advisor label FILE`: what the label of a garment that is sold may honestly say."""

from __future__ import annotations

from pathlib import Path
from typing import TYPE_CHECKING, Annotated

import typer

from advisor.cli import common, completing

if TYPE_CHECKING:
    from advisor.answer.label import Asked
    from advisor.knowledge.model import Knowledge
    from advisor.project.garment import Garment
    from advisor.textio.yamlfile import Document


def label(
    file: Annotated[Path, typer.Argument(help="A project file.")],
    json: common.Json = False,
    market: Annotated[
        str | None,
        typer.Option(
            "--market",
            help="eu or us; without it, the one of the project's units.",
            autocompletion=completing.markets,
        ),
    ] = None,
    units: common.Units = None,
) -> None:
    """Write the fibre content and care for a label; says what keeps it from being honest yet."""
    from advisor.answer.pipeline import Parts, answer
    from advisor.project.load import garment_of
    from advisor.textio.yamlfile import read_yaml

    known = common.knowledge()
    document = read_yaml(file)
    garment = garment_of(document, known)
    asked = label_asked(market, garment, document, known)
    told = answer(common.with_units(garment, units), known, Parts(label=asked, file=file.name))
    if json:
        common.print_answer(told)
    else:
        from advisor.render.label_text import render_label

        common.print_text(render_label(told))
    common.leave(told)


def label_asked(
    market: str | None, garment: Garment, document: Document, known: Knowledge
) -> Asked:
    """What is asked of a label; its market is else that of the units the project is written in."""
    from advisor.answer.label import Asked
    from advisor.project.stated import only_named

    return Asked(market, garment.units, only_named(document, known))

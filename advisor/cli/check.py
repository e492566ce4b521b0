"""`advisor check FILE`: the conflicts of a project, and taking a remedy into it."""

from __future__ import annotations

from pathlib import Path
from typing import TYPE_CHECKING, Annotated

import typer

from advisor.cli import common

if TYPE_CHECKING:
    from advisor.claims.collect import Place
    from advisor.claims.combine import ValueSet
    from advisor.claims.judgement import Advice, Judgement
    from advisor.knowledge.model import Knowledge
    from advisor.project.garment import Garment


def check(
    file: Annotated[Path, typer.Argument(help="A project file.")],
    json: common.Json = False,
    take: Annotated[
        str | None,
        typer.Option(
            "--take",
            help="Write remedies into the project: 2, or 1,3.2 (the second of 3), or all.",
        ),
    ] = None,
    units: common.Units = None,
) -> None:
    """List what cannot be reconciled, with what to do instead; ends with 1 when there is any."""
    known = common.knowledge()
    advice = _advice(file, known, units)
    taken = None
    if take is not None:
        taken = _take(file, take, advice, known)
        advice = _advice(file, known, units)
    _answer(advice, known, file, taken, json=json)


def _advice(file: Path, known: Knowledge, units: str | None) -> Advice:
    from advisor.answer.heat import with_heat_clashes
    from advisor.decide.advise import advise
    from advisor.project.load import load_project

    garment = common.with_units(load_project(file, known), units)
    return with_heat_clashes(advise(garment, known), known)


def _take(file: Path, words: str, advice: Advice, known: Knowledge) -> list[str]:
    """Write remedies into the project; every line that was written, as text.

    Raises:
        InputError: nothing is so numbered, or together they cure nothing; nothing is written.
    """
    from advisor.decide.taking import chosen
    from advisor.project.load import garment_of
    from advisor.project.taking import read_text, with_lines, write_project
    from advisor.textio.yamlfile import parse_yaml

    together = chosen(advice, words, known)
    old = read_text(file)
    new = with_lines(old, together.lines, str(file))
    read = garment_of(parse_yaml(new.removeprefix("\ufeff"), str(file)), known)
    _must_be(read, together.after, known, file)
    write_project(file, old, new)
    return [line.text for line in together.lines]


def _must_be(garment: Garment, proved: Judgement, known: Knowledge, file: Path) -> None:
    """Refuse what would not read back as the garment that was proved."""
    from advisor.decide.evaluate import judge
    from advisor.errors import InputError

    if _allowed(judge(garment, known)) != _allowed(proved):
        raise InputError(
            f"{file}: this remedy cannot be written into the project as it stands; write it by hand"
        )


def _allowed(judgement: Judgement) -> dict[tuple[Place, str], ValueSet]:
    """What is allowed in every place, which is all that a remedy may change."""
    return {
        (place, aspect): verdict.allowed
        for place, found in judgement.verdicts.items()
        for aspect, verdict in found.items()
    }


def _answer(
    advice: Advice, known: Knowledge, file: Path, taken: list[str] | None, *, json: bool
) -> None:
    from advisor.answer.core import report
    from advisor.answer.order import order_of_garment

    data = report(advice, known)
    order = order_of_garment(advice, known).get("order_conflicts", [])
    if json:
        data |= {"order_conflicts": order, "taken": taken or []}
        wanted = (
            "schema",
            "garment",
            "units",
            "taken",
            "conflicts",
            "cure_all",
            "instructions",
            "order_conflicts",
            "sources",
        )
        common.print_json({key: data[key] for key in wanted})
    else:
        from advisor.render.answers import render_check
        from advisor.render.order_text import render_cycles

        common.print_text(render_check(data, str(file), taken) + render_cycles(order))
    if order:
        raise typer.Exit(1)
    common.leave(advice)

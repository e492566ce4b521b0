"""`advisor check FILE`: the conflicts of a project, and taking a remedy into it."""

from __future__ import annotations

from dataclasses import replace
from pathlib import Path
from typing import TYPE_CHECKING, Annotated

import typer

from advisor.cli import common

if TYPE_CHECKING:
    from advisor.claims.claimsets import ValueSet
    from advisor.claims.collect import Place
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
    from advisor.answer.pipeline import Parts, decide, tell
    from advisor.project.load import load_project

    known, parts, taken = common.knowledge(), Parts(file=str(file)), None
    if take is not None:
        taken = _take(file, take, decide(load_project(file, known), known, parts).advice, known)
    garment = common.with_units(load_project(file, known), units)
    told = replace(tell(decide(garment, known, parts), known, parts), taken=taken)
    if json:
        common.print_answer(told)
    else:
        from advisor.render.answers import render_check

        common.print_text(render_check(told))
    common.leave(told)


def _take(file: Path, words: str, advice: Advice, known: Knowledge) -> tuple[str, ...]:
    """Write remedies into the project; every line that was written, as text.

    Raises:
        InputError: nothing is so numbered, or together they cure nothing; nothing is written.
    """
    from advisor.cli.output import say
    from advisor.decide.taking import chosen
    from advisor.project.load import garment_of
    from advisor.project.taking import with_lines
    from advisor.textio.files import update_file
    from advisor.textio.yamlfile import parse_yaml

    together = chosen(advice, words, known)

    def change(text: str) -> str:
        new = with_lines(text, together.lines, str(file))
        read = garment_of(parse_yaml(new, str(file)), known)
        _must_be(read, together.after, known, file)
        return new

    for note in update_file(file, change):
        say(note)
    return tuple(line.text for line in together.lines)


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

"""`advisor identify`: from what can be seen and safely tried to the fibres that remain."""

from __future__ import annotations

from pathlib import Path
from typing import TYPE_CHECKING, Annotated

import typer

from advisor.cli import common
from advisor.cli.output import say

if TYPE_CHECKING:
    from advisor.identify.eliminate import Finding
    from advisor.knowledge.model import Knowledge


def identify(  # noqa: PLR0917 - one parameter for each option
    saw: Annotated[
        list[str] | None,
        typer.Option(
            "--saw",
            help='What was seen: "burn.residue=hard bead", "weft smell=vinegar", "label=silk".',
        ),
    ] = None,
    no_flame: Annotated[
        bool, typer.Option("--no-flame", help="Propose nothing with a flame.")
    ] = False,
    no_solvent: Annotated[
        bool, typer.Option("--no-solvent", help="Propose nothing with a solvent.")
    ] = False,
    into: Annotated[
        tuple[str, str] | None,
        typer.Option(
            "--into", metavar="FILE FABRIC", help="Write what remains into a project file."
        ),
    ] = None,
    list_tests: Annotated[
        bool, typer.Option("--tests", help="List every test and its answers.")
    ] = False,
    json: common.Json = False,
    units: common.Units = None,
) -> None:
    """Find out safely what a cloth may be made of; asks, unless told with --saw what was seen."""
    from advisor.answer.identified import cloth_mixes, identified
    from advisor.records import as_data
    from advisor.render.identify_text import render

    known = common.knowledge().told(units or "metric")
    if list_tests:
        common.print_text(_tests(known))
        return
    refused = tuple(k for k, no in (("flame", no_flame), ("solvent", no_solvent)) if no)
    findings = _read(saw, known) if saw else _talk(known, refused)
    told = identified(findings, known, "us" if units == "us" else "metric", refused)
    if json:
        common.print_json(as_data(told))
    else:
        common.print_text(render(told))
    if into is not None and not told.contradicted:
        from advisor.project.fibres_into import write_fibres

        value = write_fibres(Path(into[0]), into[1], cloth_mixes(findings), known)
        say(f"Written into {into[0]}: {into[1]}, fibres: {value}")
    elif into is not None:
        say("Nothing was written: what was seen contradicts itself.")
    if told.contradicted:
        raise typer.Exit(1)


def _read(saw: list[str], known: Knowledge) -> dict[str, Finding]:
    """What remains after the observations given, warp and weft apart where they are named."""
    from advisor.errors import InputError, Problem
    from advisor.identify.eliminate import Seen
    from advisor.identify.eliminate import identify as eliminate
    from advisor.identify.observed import read_saw, seen_of

    seen: dict[str, list[Seen]] = {}
    problems: list[Problem] = []
    for text in saw:
        try:
            threads, test, answer = read_saw(text, known)
            found = seen_of(known.observations[test], answer, known)
            seen.setdefault(threads, []).append(found)
        except InputError as error:
            problems += error.problems
    if problems:
        raise InputError(problems)
    whole = seen.pop("", []) if len(seen) > 1 else []  # what was seen of all holds of each
    return {
        threads: eliminate([*some, *whole], list(known.fibres), known.observations)
        for threads, some in sorted(seen.items())
    }


def _talk(known: Knowledge, refused: tuple[str, ...]) -> dict[str, Finding]:
    from advisor.cli.conversation import Conversation, explained
    from advisor.cli.identify_talk import help_for, talk
    from advisor.overlay.places import cache_folder

    folder = cache_folder()
    draft = folder / "identify.draft" if folder.is_dir() else None
    conversation = Conversation(explained(known, lambda asked: help_for(asked, known)), draft)
    try:
        found = conversation.held(lambda ask, tell: talk(ask, tell, known, refused))
    except KeyboardInterrupt:
        if conversation.kept:
            say("\nYour answers are kept; advisor identify goes on with them.")
        raise
    conversation.over()
    return found


def _tests(known: Knowledge) -> str:
    """Every test with its answers, for scripts."""
    from advisor.render.layout import wrap

    lines: list[str] = []
    for observation in known.observations.values():
        lines += wrap(f"{observation.id}: {observation.ask}")
        lines += [x for word in observation.answers for x in wrap(word, "  = ", "      ")]
    return "\n".join(lines) + "\n"

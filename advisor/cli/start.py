"""`advisor start FILE`: asks for a garment in plain words and writes its project file."""

from __future__ import annotations

import os
from pathlib import Path
from typing import Annotated

import typer

from advisor.cli import common, completing, talk


def start(
    file: Annotated[Path, typer.Argument(help="The project file to write, such as bolero.yaml.")],
    replace: Annotated[
        bool, typer.Option("--replace", help="Overwrite the file if it is there.")
    ] = False,
    like: Annotated[
        str,
        typer.Option(
            "--like",
            help="Begin from a usual garment, such as lined-dress or coat.",
            autocompletion=completing.usual_garments,
        ),
    ] = "",
) -> None:
    """Ask what is sewn from which cloths, and write a project file to go on from."""
    from advisor.cli.conversation import Conversation, explained
    from advisor.errors import InputError, Problem, for_shell
    from advisor.project.begun import begun
    from advisor.project.begun import help_for as begun_help
    from advisor.project.load import garment_of
    from advisor.project.start import help_for, interview
    from advisor.project.template import EDITOR, project_text
    from advisor.textio.files import write_whole
    from advisor.textio.yamlfile import parse_yaml

    _check_place(file, replace=replace)
    template = _template(like) if like else ""
    known = common.knowledge()
    if not template:
        usual = ", ".join(completing.templates())
        talk.tell(f"To begin from a usual garment: --like and one of {usual}.")
    about = begun_help if template else help_for
    conversation = Conversation(explained(known, about), _draft(file, like))
    again = f"{for_shell(str(file))}{f' --like {like}' if like else ''}"
    kept = f"your answers are kept; advisor start {again} goes on with them"
    try:
        text = conversation.held(
            lambda ask, tell: (
                begun(template, ask, tell, known)
                if template
                else project_text(interview(ask, tell, known), known)
            )
        )
    except KeyboardInterrupt:
        if conversation.kept:
            talk.tell(f"\n{kept[:1].upper()}{kept[1:]}.")
        raise
    except InputError as error:
        raise InputError([*error.problems, *([Problem(kept)] * conversation.kept)]) from None
    text = f"{EDITOR}{text}"
    garment_of(parse_yaml(text, str(file)), known)  # what cannot be read again is never written
    for note in write_whole(file, text, replace=replace):
        talk.tell(f"{file}: {note}")
    conversation.over()
    talk.tell(
        f"Written: {file}. Look it over, then print its sheet: advisor sheet {for_shell(str(file))}"
    )


def _draft(file: Path, like: str) -> Path:
    """Where the answers are kept meanwhile; those to other questions under another name."""
    return Path(f"{file}.{like}.draft" if like else f"{file}.draft")


def _template(like: str) -> str:
    """The text of one of them."""
    from advisor.errors import InputError, Problem, nearest

    found, wanted = completing.templates(), like.strip().casefold().replace(" ", "-")
    if wanted not in found:
        near = nearest(wanted, list(found))
        raise InputError(
            Problem(
                f"no garment to begin from is called '{like}'",
                None,
                f"one of {', '.join(found)}",
                near,
            )
        )
    return found[wanted].read_text(encoding="utf-8")


def _check_place(file: Path, *, replace: bool) -> None:
    """Refuse a place that cannot be written to before anybody has typed a dozen answers."""
    from advisor.errors import InputError, Problem, Where

    try:
        if file.is_dir():
            wrong = "this is a folder, not a file"
        elif os.path.lexists(file) and not replace:
            wrong = "this is there already; --replace overwrites a file"
        else:
            wrong = "" if file.parent.is_dir() else "cannot write this file: no such folder"
    except (OSError, ValueError):
        wrong = "this is not a usable file name"
    if wrong:
        raise InputError(Problem(wrong, Where(str(file))))

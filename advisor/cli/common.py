"""What the commands share: loading, printing and the exit code of an answer."""

from __future__ import annotations

from pathlib import Path
from typing import TYPE_CHECKING, Annotated

import typer

from advisor.cli import completing
from advisor.cli.output import knowledge, print_answer, print_json, print_text, with_units

if TYPE_CHECKING:
    from advisor.answer.model.answer import Answer
    from advisor.knowledge.model import Knowledge
    from advisor.project.garment import Garment

__all__ = [
    "Json",
    "Units",
    "garment_of",
    "knowledge",
    "leave",
    "looks_like_file",
    "print_answer",
    "print_json",
    "print_text",
    "with_units",
]

Json = Annotated[bool, typer.Option("--json", help="Print the answer as data.")]
Units = Annotated[
    str | None,
    typer.Option(
        "--units",
        help="Print in metric or us units, whatever the project says.",
        autocompletion=completing.units,
    ),
]


def garment_of(arguments: list[str], known: Knowledge) -> Garment:
    """The garment of a project file, or of phrases."""
    if len(arguments) == 1 and looks_like_file(arguments[0]):
        from advisor.project.load import load_project

        return load_project(Path(arguments[0]), known)
    from advisor.project.quick import asked_garment

    return asked_garment(arguments, known)


def looks_like_file(text: str) -> bool:
    """Whether an argument names a file and not a cloth."""
    if text.endswith((".yaml", ".yml")):
        return True
    try:
        return Path(text).is_file()
    except (OSError, ValueError):  # too long for a name, or none that a file may have
        return False


def leave(answer: Answer) -> None:
    """End with the code that the same garment has in every command."""
    if answer.code:
        raise typer.Exit(answer.code)

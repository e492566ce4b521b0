"""What the commands share: loading, printing and the exit code of an answer."""

from __future__ import annotations

import sys
from pathlib import Path
from typing import TYPE_CHECKING, Annotated, Any

import typer

if TYPE_CHECKING:
    from advisor.engine.advise import Advice
    from advisor.knowledge.model import Knowledge
    from advisor.project.garment import Garment

Json = Annotated[bool, typer.Option("--json", help="Print the answer as data.")]
Units = Annotated[
    str | None,
    typer.Option("--units", help="Print in metric or us units, whatever the project says."),
]


def knowledge() -> Knowledge:
    """The knowledge, from the cache when it is fresh."""
    from advisor.knowledge.cache import load_knowledge

    return load_knowledge()


def garment_of(arguments: list[str], known: Knowledge) -> Garment:
    """The garment of a project file, or of phrases."""
    if len(arguments) == 1 and looks_like_file(arguments[0]):
        from advisor.project.load import load_project

        return load_project(Path(arguments[0]), known)
    from advisor.project.quick import quick_garment

    return quick_garment(list(arguments), known)


def looks_like_file(text: str) -> bool:
    """Whether an argument names a file and not a cloth."""
    return text.endswith((".yaml", ".yml")) or Path(text).exists()


def with_units(garment: Garment, units: str | None) -> Garment:
    """The garment printed in other units."""
    from dataclasses import replace

    from advisor.errors import InputError

    if units is None:
        return garment
    if units not in ("metric", "us"):
        raise InputError(f"unknown units '{units}': metric or us")
    return replace(garment, units=units)


def print_json(data: dict[str, Any]) -> None:
    """Data on stdout, the same bytes every time."""
    import json

    print_text(json.dumps(data, ensure_ascii=False, indent=1) + "\n")


def print_text(text: str) -> None:
    """Text on stdout as UTF-8, whatever the locale says."""
    sys.stdout.buffer.write(text.encode("utf-8"))
    sys.stdout.buffer.flush()


def leave(advice: Advice) -> None:
    """End with 1 where a conflict was found."""
    if advice.judgement.conflicts:
        raise typer.Exit(1)

"""What the tab key may go on with: cloths, places, aspects and steps, as they are printed."""

from __future__ import annotations

import os
from collections.abc import Iterable
from pathlib import Path
from typing import TYPE_CHECKING

import typer

if TYPE_CHECKING:
    from advisor.knowledge.model import Knowledge
    from advisor.project.garment import Garment


def cloths(incomplete: str) -> list[str]:
    """Names of cloths and notions."""
    return _beginning(incomplete, (entry.name for entry in _known().entries.values()))


def explained(incomplete: str) -> list[str]:
    """Names of whatever can be explained, and the lists."""
    from advisor.explain.listings import LISTS

    known = _known()
    names = [
        *LISTS,
        *(entry.name for entry in known.entries.values()),
        *(fibre.name for fibre in known.fibres.values()),
        *known.registers.glossary,
        *(kind.name for kind in known.places.kinds.values()),
        *(method.name for method in known.places.methods.values()),
        *known.aspects,
        *(rule.id for rule in known.rules),
    ]
    return _beginning(incomplete, names)


def aspects(incomplete: str) -> list[str]:
    """Titles, labels of rows and ids of aspects, and the order."""
    from advisor.explain.typed import aspect_names

    return _beginning(incomplete, ["order", *aspect_names(_known())])


def places(ctx: typer.Context, incomplete: str) -> list[str]:
    """Cloths and seams of the project that was named, and the garment."""
    garment = _garment(ctx)
    if garment is None:
        return []
    names = [*garment.cloths, *(seam.name for seam in garment.seams), "garment"]
    return _beginning(incomplete, names)


def steps(ctx: typer.Context, incomplete: str) -> list[str]:
    """Steps of the order of work of the project that was named."""
    garment = _garment(ctx)
    if garment is None:
        return []
    from advisor.decide.advise import advise
    from advisor.order.work import order_of

    known = _known()
    return _beginning(incomplete, order_of(advise(garment, known), known).order)


def markets(incomplete: str) -> list[str]:
    """The markets that a label is written for."""
    return _beginning(incomplete, _known().labels.plain)


def units(incomplete: str) -> list[str]:
    """The systems of units that are printed."""
    return _beginning(incomplete, ("metric", "us"))


def usual_garments(incomplete: str) -> list[str]:
    """The garments that a project may begin from."""
    return _beginning(incomplete, templates())


def examples(incomplete: str) -> list[str]:
    """The projects that may be copied to try."""
    from advisor.knowledge.place import knowledge_folder

    found = sorted((knowledge_folder() / "examples").glob("*.yaml"))
    return _beginning(incomplete, (path.stem for path in found))


def templates() -> dict[str, Path]:
    """The files of the garments that a project may begin from, by name."""
    from advisor.knowledge.place import knowledge_folder

    found = (knowledge_folder() / "templates").glob("*.yaml")
    return {path.stem: path for path in sorted(found)}


def _known() -> Knowledge:
    from advisor.overlay.cache import load_knowledge

    return load_knowledge()


def _garment(ctx: typer.Context) -> Garment | None:
    """The garment of the file on the line; a file that cannot be read completes nothing."""
    from advisor.errors import InputError
    from advisor.project.load import load_project

    try:
        return load_project(Path(str(ctx.params.get("file") or _typed_file())), _known())
    except InputError:
        return None


def _typed_file() -> str:
    """The project on the line as the shell has it; before an option's value none is parsed."""
    line = os.environ.get("COMP_WORDS") or os.environ.get("_TYPER_COMPLETE_ARGS") or ""
    return next((word for word in line.split() if word.endswith((".yaml", ".yml"))), "")


def _beginning(incomplete: str, names: Iterable[str]) -> list[str]:
    begun = incomplete.casefold().lstrip("\"'")
    return [name for name in dict.fromkeys(names) if name.casefold().startswith(begun)]

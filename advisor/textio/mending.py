"""Reads a misspelt key as the one that was meant, so that the slip is said once.

Without this a slip is told again for everything that the key would have said: the key is missing,
a name is not known, a layer has no fullness. The slip stays a problem, at its own place.
"""

from __future__ import annotations

from typing import TYPE_CHECKING, Any

from msgspec.structs import replace

from advisor.errors import Problem, in_file_order
from advisor.textio.validation import problems_from_validation, slips_of
from advisor.textio.yamlfile import Document, Positions

if TYPE_CHECKING:
    from pydantic import BaseModel

    from advisor.textio.yamlfile import Data, Steps

_ROUNDS = 4
"""A misspelt key inside a misspelt key is found when the outer one is mended."""


def validated(document: Document, model: type[BaseModel]) -> tuple[Document, list[Problem]]:
    """A document with its misspelt keys mended, and all that its form finds wrong with it."""
    from pydantic import ValidationError  # noqa: PLC0415 - heavy, and only a file needs it

    slips: dict[Problem, None] = {}
    problems: tuple[Problem, ...] = ()
    for _ in range(_ROUNDS):
        try:
            model.model_validate(document.data)
        except ValidationError as error:
            problems = problems_from_validation(
                error, document.data, document.positions, document.file, model=model
            )
            renames = slips_of(error, document.data, model)
            if not renames:
                break
            places = {document.where_key(*steps) for steps, _ in renames}
            slips |= dict.fromkeys(
                p for p in problems if p.where in places and p.message.startswith("unknown key")
            )
            for steps, name in renames:
                document = _renamed(document, steps, name)
        else:
            problems = ()
            break
    found = dict.fromkeys([*slips, *problems])
    return document, sorted(found, key=in_file_order)


def _renamed(document: Document, steps: Steps, name: str) -> Document:
    """The document with one key of another name; its places stay where they are in the file."""
    *way, old = steps
    data = _with_key(document.data, tuple(way), str(old), name)

    def moved(at: Steps) -> Steps:
        return (*way, name, *at[len(steps) :]) if at[: len(steps)] == steps else at

    positions = Positions(
        {moved(at): place for at, place in document.positions.keys.items()},
        {moved(at): place for at, place in document.positions.values.items()},
    )
    return replace(document, data=data, positions=positions)


def _with_key(data: Data, way: Steps, old: str, name: str) -> Any:
    if not way and isinstance(data, dict):
        return {name if key == old else key: value for key, value in data.items()}
    step = way[0] if way else None
    if isinstance(data, dict):
        return {k: _with_key(v, way[1:], old, name) if k == step else v for k, v in data.items()}
    if isinstance(data, list):
        return [_with_key(v, way[1:], old, name) if i == step else v for i, v in enumerate(data)]
    return data

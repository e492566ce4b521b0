"""An answer as plain data: the JSON contract, made from the types and from nothing else.

A field is written under its own name, without the underscore that keeps it from being a word of
the language. A field that is `optional` is left out where it is None; a type may also say by
`written` which of its fields it has.
"""

from __future__ import annotations

from dataclasses import Field, fields
from typing import Any, TypeAlias

Plain: TypeAlias = "bool | int | float | str | list[Plain] | dict[str, Plain] | None"
"""What JSON can hold."""
OMIT = "left out where it is None"
FLAT = "its fields stand among those of its owner"
NEVER = "is for printing alone"
WRITTEN = "written"
UNWRITTEN = {NEVER: True}
"""Of a field that the data does not have."""
OPTIONAL = {OMIT: True}
"""Of a field that is left out of the data where nobody says anything."""
FLATTENED = {OMIT: True, FLAT: True}
"""Of a field whose own fields are written beside the others; nothing where it is None."""


def as_data(value: object) -> Plain:
    """A value of the answer as JSON can hold it.

    Args:
        value: one of the answer's types, or what they are made of.

    Raises:
        TypeError: it is neither.
    """
    if value is None or isinstance(value, bool | int | float | str):
        return value
    if isinstance(value, tuple | list):
        return [as_data(one) for one in value]
    if isinstance(value, dict):
        return {str(key): as_data(one) for key, one in value.items()}
    if not hasattr(value, "__dataclass_fields__"):
        raise TypeError(f"an answer holds no {type(value).__name__}")
    wanted = getattr(value, WRITTEN, None)
    names = None if wanted is None else wanted()
    data: dict[str, Plain] = {}
    for one in fields(value):  # type: ignore[arg-type]
        if one.metadata.get(NEVER):
            continue
        inner = getattr(value, one.name)
        if (names is not None and one.name not in names) or (inner is None and left_out(one)):
            continue
        plain = as_data(inner)
        if one.metadata.get(FLAT) and isinstance(plain, dict):
            data |= plain
        else:
            data[json_name(one.name)] = plain
    return data


def json_name(name: str) -> str:
    """What a field is called in the data."""
    return name.removesuffix("_")


def left_out(one: Field[Any]) -> bool:
    """Whether a field is left out where it is None."""
    return bool(one.metadata.get(OMIT))

"""Frozen records as plain data and back, made from their types and from nothing else.

A field is written under its own name, without the underscore that keeps it from being a word of
the language. A field that is `optional` is left out where it is None; a type may also say by
`written` which of its fields it has.

Read back, a field that stands in no data has its default. What nobody said (None) is "" to a field
that takes only words, and a `yes` or `no` is what it says to a field that takes only truth values.
"""

from __future__ import annotations

import math
from collections.abc import Callable, Mapping
from dataclasses import Field, fields
from functools import cache
from types import NoneType, UnionType
from typing import (
    Any,
    Literal,
    TypeAlias,
    TypeVar,
    Union,
    cast,
    get_args,
    get_origin,
    get_type_hints,
)

from msgspec import NODEFAULT, Struct, structs

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
    if isinstance(value, Struct):
        return {json_name(name): as_data(getattr(value, name)) for name in value.__struct_fields__}
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


def as_mapping(record: object) -> dict[str, Any]:
    """A record as a mapping by the names of its fields.

    Raises:
        TypeError: it is no record, or holds what JSON cannot.
    """
    data = as_data(record)
    if not isinstance(data, dict):
        raise TypeError(f"{type(record).__name__} is no record")
    return data


def picked(record: object, names: str) -> dict[str, Any]:
    """Some fields of a record as plain data; the names are words of one text."""
    return {name: as_data(getattr(record, name)) for name in names.split()}


def json_name(name: str) -> str:
    """What a field is called in the data."""
    return name.removesuffix("_")


def left_out(one: Field[Any]) -> bool:
    """Whether a field is left out where it is None."""
    return bool(one.metadata.get(OMIT))


_T = TypeVar("_T")
_Read: TypeAlias = "Callable[[Any], Any]"


def from_data(kind: type[_T], data: object, **known: object) -> _T:
    """A record out of what JSON holds of it.

    Args:
        kind: the record's class, or what such classes are made of.
        data: a mapping by the names of its fields; what stands there beside them is not read.
        known: fields that the data need not hold, such as the name that it stands under.

    Raises:
        KeyError, TypeError, ValueError, AttributeError: the data are of another shape. A word that
            stands for a number is found out, and so is a number that is not finite.
    """
    whole = {**cast("Mapping[str, object]", data), **known} if known else data
    return cast("_T", _reader(cast("Any", kind))(whole))


@cache
def _reader(kind: Any) -> _Read:
    """What reads a value of a type."""
    origin, inside = get_origin(kind), get_args(kind)
    if kind is Any or kind is object:
        return _as_it_is
    if kind in _LEAVES:
        return _LEAVES[kind]
    if origin is Literal:
        return _one_of(inside)
    if origin in (Union, UnionType):
        return _or_none(inside)
    if origin in (tuple, frozenset):
        return _group(origin, inside)
    if origin in (dict, Mapping):
        read = _reader(inside[1])
        return lambda data: {key: read(value) for key, value in data.items()}
    if isinstance(kind, type) and issubclass(kind, Struct):
        return _record(kind)
    raise TypeError(f"a record holds no {kind}")


def _record(kind: Any) -> _Read:
    hints = get_type_hints(kind)
    rows = [
        (json_name(one.name), _reader(hints[one.name]), one.default, one.default_factory)
        for one in structs.fields(kind)
    ]

    def read(data: Mapping[str, Any]) -> Any:
        values = []
        for name, value_of, default, made in rows:
            if name in data:
                values.append(value_of(data[name]))
            elif default is not NODEFAULT:
                values.append(default)
            elif made is not NODEFAULT:
                values.append(made())
            else:
                raise KeyError(name)
        return kind(*values)

    return read


def _group(origin: Any, inside: tuple[Any, ...]) -> _Read:
    if origin is frozenset or inside[1:] == (Ellipsis,):
        read = _reader(inside[0])
        return lambda data: origin([read(one) for one in _listed(data)])
    reads = [_reader(one) for one in inside]
    return lambda data: tuple(read(one) for read, one in zip(reads, _listed(data), strict=True))


def _or_none(inside: tuple[Any, ...]) -> _Read:
    reads = [_reader(one) for one in inside if one is not NoneType]
    if len(reads) != 1 or len(inside) != 2:
        raise TypeError(f"a record holds no choice of {inside}")
    return lambda data: None if data is None else reads[0](data)


def _one_of(words: tuple[Any, ...]) -> _Read:
    def read(data: Any) -> Any:
        if data not in words:
            raise ValueError(data)
        return data

    return read


def _listed(data: Any) -> Any:
    if not isinstance(data, list | tuple):
        raise TypeError(data)
    return data


def _as_it_is(data: Any) -> Any:
    return data


def _word(data: Any) -> str:
    if data is None:
        return ""
    if not isinstance(data, str):
        raise TypeError(data)
    return data


def _number(data: Any) -> float:
    if isinstance(data, bool) or not isinstance(data, int | float) or not math.isfinite(data):
        raise TypeError(data)
    return data


def _whole(data: Any) -> int:
    if isinstance(data, bool) or not isinstance(data, int):
        raise TypeError(data)
    return data


def _truth(data: Any) -> bool:
    found = {"yes": True, "no": False}.get(data, data) if isinstance(data, str) else data
    if not isinstance(found, bool):
        raise TypeError(data)
    return found


_LEAVES: dict[Any, _Read] = {str: _word, float: _number, int: _whole, bool: _truth}

"""Frozen records as the standard library makes them, at a third of the price of an import.

A command imports some two hundred records, and the library writes and compiles six functions for
each: a third of what a plain question cost. Only how one is made differs from record to record;
how it is compared, hashed, shown and kept from being changed is the same for all.
"""

from __future__ import annotations

import dataclasses
from collections.abc import Callable, Sequence
from operator import attrgetter
from typing import TYPE_CHECKING, Any

__all__ = ["dataclass"]

if TYPE_CHECKING:
    from dataclasses import dataclass
else:

    def dataclass(*, frozen, slots):
        """The decorator, like `dataclasses.dataclass(frozen=True, slots=True)`.

        Raises:
            TypeError: another record is asked for, or one whose base the library has frozen.
        """
        if not (frozen and slots):
            raise TypeError("only frozen records with slots are made here")
        return _record


def _record(cls: type) -> type:
    made: type = dataclasses.dataclass(init=False, repr=False, eq=False, slots=True)(cls)
    fields = dataclasses.fields(made)
    compared = [f.name for f in fields if f.compare]
    methods = {
        "__init__": _maker(made, fields),
        "__repr__": _shown([f.name for f in fields if f.repr]),
        "__eq__": _equal(_values(compared)),
        "__hash__": _hashed(_values([f.name for f in fields if f.hash or f.name in compared])),
        "__setattr__": _kept,
        "__delattr__": _kept,
        "__getstate__": _state,
        "__setstate__": _with_state,
    }
    for name, method in methods.items():
        if vars(made).get(name) is None:
            setattr(made, name, method)
    return made


def _maker(made: type, fields: Sequence[dataclasses.Field[Any]]) -> Callable[..., None]:
    """What sets each field by its own slot, written out: it runs more often than all else."""
    none = dataclasses.MISSING
    scope: dict[str, Any] = {"_none": none}
    given, lines = ["self"], []
    for f in fields:
        scope[f"_set_{f.name}"] = getattr(made, f.name).__set__
        scope[f"_usual_{f.name}"] = f.default if f.default_factory is none else f.default_factory
        value = f.name if f.init else f"_usual_{f.name}"
        if f.default_factory is not none:
            anew = f"_usual_{f.name}()"
            value = f"{anew} if {f.name} is _none else {f.name}" if f.init else anew
            given += [f"{f.name}=_none"] * f.init
        elif f.init:
            given.append(f.name if f.default is none else f"{f.name}=_usual_{f.name}")
        lines.append(f" _set_{f.name}(self, {value})")
    if hasattr(made, "__post_init__"):
        lines.append(" self.__post_init__()")
    text = f"def __init__({', '.join(given)}):\n" + "\n".join(lines or [" pass"])
    exec(text, scope)  # noqa: S102 - names of fields alone stand in it, as in the library's own
    maker: Callable[..., None] = scope["__init__"]
    maker.__qualname__ = f"{made.__qualname__}.__init__"
    return maker


def _values(names: Sequence[str]) -> Callable[[Any], tuple[Any, ...]]:
    if len(names) > 1:
        return attrgetter(*names)
    return lambda record: tuple(getattr(record, name) for name in names)


def _equal(values: Callable[[Any], tuple[Any, ...]]) -> Callable[[Any, object], bool]:
    def same(self: Any, other: object) -> bool:
        same: bool = NotImplemented
        if other.__class__ is self.__class__:
            same = values(self) == values(other)
        return same

    return same


def _hashed(values: Callable[[Any], tuple[Any, ...]]) -> Callable[[Any], int]:
    def hashed(self: Any) -> int:
        return hash(values(self))

    return hashed


def _shown(names: Sequence[str]) -> Callable[[Any], str]:
    def shown(self: Any) -> str:
        told = ", ".join(f"{name}={getattr(self, name)!r}" for name in names)
        return f"{self.__class__.__qualname__}({told})"

    return shown


def _kept(_: Any, name: str, *_value: object) -> None:
    raise dataclasses.FrozenInstanceError(f"cannot change {name!r}")


def _state(self: Any) -> list[Any]:
    return [getattr(self, f.name) for f in dataclasses.fields(self)]


def _with_state(self: Any, state: Sequence[Any]) -> None:
    for f, value in zip(dataclasses.fields(self), state, strict=True):
        object.__setattr__(self, f.name, value)

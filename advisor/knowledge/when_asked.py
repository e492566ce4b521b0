"""Cloths and notions by id, each built when it is first asked for: a question needs few."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Mapping, ValuesView
from typing import Any, TypeVar

T = TypeVar("T")


class WhenAsked(Mapping[str, T]):
    """Entries by id out of their plain data."""

    def __init__(
        self, raw: dict[str, dict[str, Any]], make: Callable[[str, dict[str, Any]], T]
    ) -> None:
        self._raw = raw
        self._make = make
        self._built: dict[str, T] = {}
        self._all: dict[str, T] = {}

    def __getitem__(self, id_: str) -> T:
        found = self._built.get(id_)
        if found is None:
            found = self._built[id_] = self._make(id_, self._raw[id_])
        return found

    def kind_of(self, id_: str) -> str:
        """The kind of an entry, which is not built for it."""
        return str(self._raw[id_]["kind"])

    def values(self) -> ValuesView[T]:
        """All of them, built once for all who walk over them."""
        if len(self._all) < len(self._raw):
            self._all = {id_: self[id_] for id_ in self._raw}
        return self._all.values()

    def __iter__(self) -> Iterator[str]:
        return iter(self._raw)

    def __len__(self) -> int:
        return len(self._raw)

"""Cloths and notions by id, each built when it is first asked for: a question needs few."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Mapping
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

    def __getitem__(self, id_: str) -> T:
        found = self._built.get(id_)
        if found is None:
            found = self._built[id_] = self._make(id_, self._raw[id_])
        return found

    def kind_of(self, id_: str) -> str:
        """The kind of an entry, which is not built for it."""
        return str(self._raw[id_]["kind"])

    def __iter__(self) -> Iterator[str]:
        return iter(self._raw)

    def __len__(self) -> int:
        return len(self._raw)

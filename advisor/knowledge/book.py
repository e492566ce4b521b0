"""The knowledge as it was read: every entry with its form, and the place where it stands."""

from __future__ import annotations

from collections.abc import Collection, Iterable
from dataclasses import dataclass, field
from typing import Any

from advisor.errors import Problem, Where, nearest
from advisor.knowledge.names import source_id
from advisor.textio.yamlfile import Document


@dataclass
class BookItem:
    """One entry with its form and the place that it was read from."""

    id: str
    form: Any
    document: Document
    path: tuple[Any, ...] = ()
    area: str = ""
    lent: dict[tuple[Any, ...], tuple[BookItem, tuple[Any, ...]]] = field(default_factory=dict)
    """What is said elsewhere, by its place in the form: the entry that says it, and where there."""

    def where(self, *path: Any) -> Where:
        """The place of a value of the entry, in the file where it stands."""
        for length in range(len(path), 0, -1):
            if path[:length] in self.lent:
                item, inside = self.lent[path[:length]]
                return item.where(*inside, *path[length:])
        return self.document.where(*self.path, *path)

    def said_by(self, *path: Any) -> str:
        """The id of the entry in whose file a value stands."""
        if path in self.lent:
            item, inside = self.lent[path]
            return item.said_by(*inside)
        return self.id

    def unknown(
        self, path: tuple[Any, ...], words: Iterable[str], known: Collection[str], what: str
    ) -> list[Problem]:
        """Every word at a place of the entry that stands in no register.

        An empty register could not be read, which is said already.
        """
        return [
            Problem(f"unknown {what} '{word}'", self.where(*path), None, nearest(word, known))
            for word in words
            if known and word not in known
        ]

    def uncited(
        self, path: tuple[Any, ...], sources: Iterable[str], known: Collection[str]
    ) -> list[Problem]:
        """Every source named at a place of the entry that is not known."""
        return self.unknown(path, map(source_id, sources), known, "source")


@dataclass
class Book:
    """All entries by kind, and every problem met while reading them."""

    sources: dict[str, BookItem] = field(default_factory=dict)
    aspects: dict[str, BookItem] = field(default_factory=dict)
    traits: dict[str, BookItem] = field(default_factory=dict)
    words: dict[str, BookItem] = field(default_factory=dict)
    fibres: dict[str, BookItem] = field(default_factory=dict)
    fabrics: dict[str, BookItem] = field(default_factory=dict)
    notions: dict[str, BookItem] = field(default_factory=dict)
    rules: dict[str, BookItem] = field(default_factory=dict)
    remedies: dict[str, BookItem] = field(default_factory=dict)
    machines: dict[str, BookItem] = field(default_factory=dict)
    order: BookItem | None = None
    places: dict[str, BookItem] = field(default_factory=dict)
    methods: dict[str, BookItem] = field(default_factory=dict)
    seams: dict[str, BookItem] = field(default_factory=dict)
    kit: dict[str, BookItem] = field(default_factory=dict)
    observations: dict[str, BookItem] = field(default_factory=dict)
    labels: dict[str, BookItem] = field(default_factory=dict)
    cleaning: dict[str, BookItem] = field(default_factory=dict)
    glossary: dict[str, BookItem] = field(default_factory=dict)
    gaps: dict[str, BookItem] = field(default_factory=dict)
    loosened: dict[str, list[list[Any]]] = field(default_factory=dict)
    problems: list[Problem] = field(default_factory=list)

    def entries(self) -> dict[str, BookItem]:
        """Cloths and notions together."""
        return {**self.fabrics, **self.notions}

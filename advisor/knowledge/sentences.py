"""Checks the sentences of the shipped knowledge: a quantity in one is a value in braces.

A maker's own notes are printed as she wrote them, so this is asked of the shipped files alone.
"""

from __future__ import annotations

from collections.abc import Iterator
from typing import Any, Final

from advisor.errors import Problem
from advisor.knowledge.book import Book, BookItem
from advisor.textio.yamlfile import Document
from advisor.units.sentences import faults

_WORDS: Final = frozenset(
    {
        "aspect",
        "also",
        "best",
        "change",
        "example",
        "examples",
        "fibres",
        "id",
        "like",
        "name",
        "needs",
        "options",
        "sources",
        "traits",
        "traits sources",
        "unit",
        "when",
        "without",
        "words",
    }
)
"""Keys that hold words of a closed list, names or conditions and no sentences."""
_AS_PRINTED: Final = frozenset({"sources", "labels"})
"""Registers that give what is printed elsewhere: titles of works, and the words of a label."""
_LONE_UNITS: Final = {"NM": "NM", "mm": "mm", "°C": "°C"}
_STITCHED: Final = "stitch.length"


def check_sentences(book: Book) -> list[Problem]:
    """Every number in a sentence whose unit stands bare, or that would need one."""
    documents: dict[str, Document] = {}
    for name, shelf in vars(book).items():
        if isinstance(shelf, dict) and name not in _AS_PRINTED:
            for item in shelf.values():
                if isinstance(item, BookItem):
                    documents[item.document.file] = item.document
    if book.order is not None:
        documents[book.order.document.file] = book.order.document
    return [
        Problem(text, document.where(*way))
        for document in documents.values()
        for way, sentence, unit in _sentences(document.data, (), "", book)
        for _, text in faults(sentence, unit)
    ]


def _sentences(
    data: Any, way: tuple[str | int, ...], unit: str, book: Book
) -> Iterator[tuple[tuple[str | int, ...], str, str]]:
    """Every text with the way to it and what a number without a unit would mean there."""
    if isinstance(data, str):
        if any(letter.isdigit() for letter in data):
            yield way, data, unit
    elif isinstance(data, dict):
        unit = _unit_of(data.get("aspect"), book)
        for key, value in data.items():
            published = key == "note" and "sources" in data  # as the source itself prints it
            if key not in _WORDS and not published:
                yield from _sentences(value, (*way, key), unit, book)
    elif isinstance(data, list):
        for i, value in enumerate(data):
            yield from _sentences(value, (*way, i), unit, book)


def _unit_of(aspect: Any, book: Book) -> str:
    if aspect == _STITCHED:
        return "mm stitch"
    item = book.aspects.get(str(aspect))
    return _LONE_UNITS.get(item.form.unit or "", "") if item else ""

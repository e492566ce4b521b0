"""The trade words of `glossary.yaml`, which a folder may do without: checked, compiled, found.

The values here carry no pydantic, so that a warm start reads them from the cache.
"""

from __future__ import annotations

from collections.abc import Mapping
from typing import TYPE_CHECKING, Any

from msgspec import Struct

from advisor.errors import Problem
from advisor.knowledge.names import plain_name
from advisor.records import from_data

if TYPE_CHECKING:
    from advisor.knowledge.book import BookItem

FILES = ("glossary",)


class Term(Struct, frozen=True):
    """A trade word: what it means, its other names, what to read on, and who says so."""

    name: str
    means: str
    also: tuple[str, ...]
    see: tuple[str, ...]
    sources: tuple[str, ...]


def check_glossary(terms: Mapping[str, BookItem], sources: Mapping[str, BookItem]) -> list[Problem]:
    """Sources that are not known, and words that stand for two terms."""
    problems: list[Problem] = []
    taken: dict[str, str] = {}
    for item in terms.values():
        problems += item.uncited(("sources",), item.form.sources, sources)
        for word in (item.id, *item.form.also):
            other = taken.setdefault(plain_name(word), item.id)
            if other != item.id:
                problems.append(Problem(f"'{word}' is a name of '{other}' too", item.where("also")))
    return problems


def compile_glossary(terms: Mapping[str, BookItem]) -> dict[str, Any]:
    """The register as plain data."""
    alphabet = sorted(terms.items(), key=lambda pair: plain_name(pair[0]))
    return {id_: item.form.model_dump(mode="json") for id_, item in alphabet}


def glossary_from_plain(raw: Mapping[str, Any]) -> dict[str, Term]:
    """Build it from the compiled data, in the order of the alphabet."""
    return {id_: from_data(Term, row, name=id_) for id_, row in raw.items()}


def term_of(word: str, terms: Mapping[str, Term]) -> Term | None:
    """The term of a name, capitals, hyphens and accents or not."""
    plain = plain_name(word)
    for term in terms.values():
        if plain in map(plain_name, (term.name, *term.also)):
            return term
    return None

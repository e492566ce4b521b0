"""What a garment file may have forgotten (`gaps.yaml`), which a folder may do without.

The values here carry no pydantic, so that a warm start reads them from the cache.
"""

from __future__ import annotations

from collections.abc import Mapping
from typing import TYPE_CHECKING, Any

from msgspec import Struct

from advisor.errors import Problem, nearest
from advisor.records import from_data

if TYPE_CHECKING:
    from advisor.knowledge.book import Book, BookItem

FILES = ("gaps",)
FIELDS = frozenset({"at", "cloth"})
"""What a sentence may name in braces."""


class Sign(Struct, frozen=True):
    """Places of which some are meant: all that is said holds, one of the words of each.

    `of` is shell, lining, or both where it joins them; "" where any will do. `same_part` where it
    has to lie in the part of the place that calls for it.
    """

    roles: tuple[str, ...]
    kinds: tuple[str, ...]
    families: tuple[str, ...]
    words: tuple[str, ...]
    without: tuple[str, ...]
    of: str
    same_part: bool


class Wanted(Struct, frozen=True):
    """The place to write; of its layers `cloth` stands for the cloth, any other is a notion."""

    name: str
    layers: tuple[str, ...]
    kind: str
    edge: str
    times: int


class GapRule(Struct, frozen=True):
    """A place that calls for another, and what is told where nothing fills it.

    `each_part` where each part that has such a place is asked by itself.
    """

    id: str
    each_part: bool
    at: Sign
    beside: tuple[Sign, ...]
    facts: tuple[str, ...]
    filled: tuple[Sign, ...]
    says: str
    write: Wanted | None
    sources: tuple[str, ...]


def check_gaps(book: Book) -> list[Problem]:
    """Every word of `gaps.yaml` that names nothing."""
    order = book.order.form.kinds if book.order else {}
    families = {item.form.family for item in book.places.values()}
    known = {"roles": set(order), "kinds": set(book.places), "families": families}
    problems: list[Problem] = []
    for item in book.gaps.values():
        form = item.form
        cited = [text.split(" ", 1)[0] for text in form.sources]
        problems += _unknown(item, ("sources",), cited, set(book.sources), "source")
        named = [part.split("}", 1)[0] for part in form.says.split("{")[1:]]
        problems += _unknown(item, ("says",), named, set(FIELDS), "word in braces")
        signs: list[tuple[tuple[Any, ...], Any]] = [(("at",), form.at)]
        signs += [(("beside", i), one) for i, one in enumerate(form.beside)]
        signs += [(("filled", i), one) for i, one in enumerate(form.filled)]
        for path, sign in signs:
            for key, names in known.items():
                problems += _unknown(item, (*path, key), getattr(sign, key), names, key[:-1])
    return problems


def _unknown(
    item: BookItem, path: tuple[Any, ...], words: Any, known: set[str], what: str
) -> list[Problem]:
    names = sorted(known)  # an empty register could not be read, which is said already
    return [
        Problem(f"unknown {what} '{word}'", item.where(*path), None, nearest(word, names))
        for word in words
        if names and word not in known
    ]


def compile_gaps(gaps: Mapping[str, BookItem]) -> dict[str, Any]:
    """The register as plain data, the gravest first, as the file has it."""
    return {id_: _plain(item.form) for id_, item in gaps.items()}


def _plain(form: Any) -> dict[str, Any]:
    raw = form.model_dump(mode="json")
    raw["each_part"] = raw["each_part"] == "yes"
    for sign in (raw["at"], *raw["beside"], *raw["filled"]):
        sign["of"] = sign["of"] or ""
        sign["same_part"] = sign["same_part"] == "yes"
    if raw["write"]:
        line = raw["write"]
        line |= {"kind": line["kind"] or "", "edge": line["edge"] or ""}
        line["times"] = line["times"] or 1
    return dict(raw)


def gaps_from_plain(raw: Mapping[str, Any]) -> tuple[GapRule, ...]:
    """Build it from the compiled data."""
    return tuple(from_data(GapRule, {"id": id_, **row}, name=id_) for id_, row in raw.items())

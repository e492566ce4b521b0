"""The rows that say what a source is, for every part of an answer that cites one."""

from __future__ import annotations

from collections.abc import Iterable
from typing import Any

from advisor.knowledge.model import Knowledge


def source_row(id_: str, knowledge: Knowledge) -> dict[str, str]:
    """A source as data; `where` it can be opened, and `read` where its text was not seen."""
    source = knowledge.sources[id_]
    row = {"id": id_, "citation": source.citation, "kind": source.kind}
    if source.where:
        row["where"] = source.where
    if source.read not in ("whole", "part"):
        row["read"] = source.read
    return row


def add_sources(data: dict[str, Any], cited: Iterable[str], knowledge: Knowledge) -> None:
    """Add to an answer's sources those that it does not list yet.

    Args:
        data: the answer, with its `sources`.
        cited: ids, each with or without a place in the work behind it.
        knowledge: where the sources are.
    """
    listed = {row["id"] for row in data["sources"]}
    for id_ in dict.fromkeys(text.split(" ", 1)[0] for text in cited):
        if id_ not in listed and id_ in knowledge.sources:
            data["sources"].append(source_row(id_, knowledge))

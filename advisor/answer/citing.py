"""The rows that say what a source is, for every part of an answer that cites one."""

from __future__ import annotations

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

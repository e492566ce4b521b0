"""Edges said by how they are made: `edge: bound` says no fact of an edge, it says what is made.

A maker writes what she does to an edge under the key that names it. The file keeps her words; here
they become the fact and the kind that everything else reads.
"""

from __future__ import annotations

from typing import Any

from advisor.knowledge import nouns
from advisor.project.headwords import the_words

MADE = {"faced": "faced edge", "bound": "bound edge", "raw": "raw edge", "elastic": "elastic edge"}
"""What an edge is made as, by the word said for it."""


def told_apart(row: dict[str, Any]) -> dict[str, Any]:
    """A place whose edge is said by how it is made, with the fact and the kind of that edge.

    A kind that she says as well stays, unless it is only the family of edges.
    """
    word = row.get("edge")
    made = MADE.get(word.strip().casefold()) if isinstance(word, str) else None
    if made is None:
        return row
    kind = row.get("kind")
    said = {key: value for key, value in row.items() if key != "edge"}
    if made == "faced edge":
        said["edge"] = "turned"
        if is_slit(str(row.get("name", ""))) and kind in (None, "edge"):
            return {key: value for key, value in said.items() if key != "kind"}  # cut first
    if made == "bound edge" and kind in (None, "edge") and _slashed(str(row.get("name", ""))):
        return {key: value for key, value in said.items() if key != "kind"}  # cut first
    return said | ({"kind": made} if kind in (None, "edge") else {})


PLACKET, SLIT, FRONT = "placket", "slit", "front"


def _slashed(name: str) -> bool:
    """Whether a place is called a placket or a slit; that of a front is its whole edge."""
    words = the_words(name)
    return words[-1:] in ((PLACKET,), (SLIT,)) and FRONT not in words


def is_slit(name: str) -> bool:
    """Whether a place is called a slit: it has no edge before it is slashed."""
    return bool(nouns.SLITS & {*the_words(name)[-1:]})

"""Which cloths of a project file have their fibres only in a name, with no word on how much.

Whoever says "linen suiting" says linen, and that is enough to handle it; it is not enough to write
100 % on a label.
"""

from __future__ import annotations

from typing import TYPE_CHECKING, Any

from advisor.errors import InputError
from advisor.knowledge.model import Knowledge
from advisor.project.names import tidy_name
from advisor.project.phrase import read_phrase

if TYPE_CHECKING:
    from advisor.textio.yamlfile import Document


def only_named(document: Document, knowledge: Knowledge) -> frozenset[str]:
    """The cloths of a sound project whose fibre stands only in their name."""
    fabrics: dict[str, Any] = document.data["fabrics"]
    found = set()
    for key, said in fabrics.items():
        about = {"fabric": said} if isinstance(said, str) else said
        if about.get("fibres") is None and _in_name(about.get("fabric"), knowledge):
            found.add(tidy_name(key))
    return frozenset(found)


def _in_name(phrase: Any, knowledge: Knowledge) -> bool:
    if not isinstance(phrase, str):
        return False
    try:
        reading = read_phrase(phrase, knowledge)
    except InputError:  # a notion, which a label does not count
        return False
    return bool(reading.fibres) and not reading.stated

"""What a question in several words asks about: "what is ease", "cotton elastane jersey"."""

from __future__ import annotations

import re

from advisor.errors import InputError
from advisor.knowledge.model import Entry, Knowledge
from advisor.project.phrase import read_phrase

_ASKED = re.compile(
    r"^(?:what(?:'s| is| are| does)|meaning of|define)\s+(?:an?\s|the\s)?", re.IGNORECASE
)


def one_of(name: str) -> str:
    """A name in the singular, as far as the last word of a trade name needs it."""
    return name[:-1] if len(name) > 3 and name.endswith("s") and not name.endswith("ss") else name


def bare_name(typed: str) -> str:
    """A name without the words of a question before it."""
    return _ASKED.sub("", typed).rstrip("? ") or typed


def cloth_meant(typed: str, knowledge: Knowledge, *, wholly: bool = False) -> dict[str, Entry]:
    """The cloth that several words stand for, under the sort of thing it is; or nothing.

    Where they stand for something else, all of them have to: "fine silk pins" are no silk.
    """
    if " " not in typed.strip():
        return {}
    try:
        reading = read_phrase(typed, knowledge)
    except InputError:
        return {}
    return {} if wholly and reading.notes else {"entry": knowledge.entries[reading.entry]}

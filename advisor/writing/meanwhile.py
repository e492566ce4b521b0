"""Whether a file is still the one that somebody looked at before she asked for a change."""

from __future__ import annotations

from hashlib import blake2b
from pathlib import Path

from advisor.errors import InputError, Problem, Where


class ChangedError(InputError):
    """The file was changed since it was looked at; nothing was written."""


def mark_of(text: str) -> str:
    """A short mark that another text does not have."""
    return blake2b(text.encode("utf-8", "surrogatepass"), digest_size=16).hexdigest()


def refuse_changed(text: str, seen: str, file: Path) -> None:
    """Refuse where a text is not the one that was seen; nothing where none was.

    Raises:
        ChangedError: it is another.
    """
    if seen and mark_of(text) != seen:
        where = Where(str(file))
        raise ChangedError(Problem("this file was changed meanwhile; nothing was written", where))

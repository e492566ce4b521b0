"""Collects every problem of a file with its place, so that it can be mended at one go."""

from __future__ import annotations

from collections.abc import Callable, Iterable
from dataclasses import dataclass, field, replace
from typing import TYPE_CHECKING, TypeVar

from advisor.errors import InputError, Problem, Where, in_file_order, nearest

if TYPE_CHECKING:
    from advisor.textio.yamlfile import Document, Steps

T = TypeVar("T")


@dataclass(slots=True)
class Findings:
    """Problems found so far; without a document they have no place."""

    document: Document | None = None
    problems: list[Problem] = field(default_factory=list)

    def attempt(self, steps: Steps, read: Callable[[], T], *, key: bool = False) -> T | None:
        """What `read` gives, or None with its problems noted at a place."""
        try:
            return read()
        except InputError as error:
            where = self._where(steps, key=key)
            self.problems += [replace(p, where=p.where or where) for p in error.problems]
            return None

    def say(
        self,
        steps: Steps,
        message: str,
        expected: str | None = None,
        near: tuple[str, Iterable[str]] = ("", ()),
        *,
        key: bool = False,
    ) -> None:
        """Note a problem; `near` is the word that was written and the words known there."""
        where = self._where(steps, key=key)
        self.problems.append(Problem(message, where, expected, nearest(*near)))

    def stop(self) -> None:
        """Raise what was found, in the order of the file.

        Raises:
            InputError: there was anything.
        """
        if self.problems:
            unique = dict.fromkeys(self.problems)
            raise InputError(sorted(unique, key=in_file_order))

    def _where(self, steps: Steps, *, key: bool) -> Where | None:
        if self.document is None:
            return None
        return self.document.where_key(*steps) if key else self.document.where(*steps)

"""Collects every problem of a file with its place, so that it can be mended at one go."""

from __future__ import annotations

from collections.abc import Callable, Iterable
from typing import TYPE_CHECKING, TypeVar

from msgspec import Struct, field
from msgspec.structs import replace

from advisor.errors import InputError, Problem, Where, in_file_order, nearest

if TYPE_CHECKING:
    from advisor.textio.yamlfile import Document, Steps

T = TypeVar("T")


class Findings(Struct):
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
            raise InputError(_said_once(sorted(unique, key=in_file_order)))

    def _where(self, steps: Steps, *, key: bool) -> Where | None:
        if self.document is None:
            return None
        return self.document.where_key(*steps) if key else self.document.where(*steps)


def _said_once(problems: list[Problem]) -> list[Problem]:
    """The same word not known in several places is one problem, at the first of them."""
    groups: dict[str, list[Problem]] = {}
    for number, problem in enumerate(problems):
        same = problem.message if problem.nearest or _NAMED in problem.message else ""
        groups.setdefault(same or str(number), []).append(problem)
    return [_with_places(group) for group in groups.values()]


_NAMED = "of this project is called"


def _with_places(group: list[Problem]) -> Problem:
    first, *others = group
    if not others:
        return first
    lines = sorted({p.where.line for p in others if p.where and p.where.line})
    lines = [line for line in lines if first.where is None or line != first.where.line]
    also = f" (and so on line{'s' if len(lines) > 1 else ''} {_listed(lines)})" if lines else ""
    return replace(first, message=first.message + also)


def _listed(lines: list[int]) -> str:
    shown = ", ".join(str(line) for line in lines[:_MOST_LINES])
    return f"{shown} and {len(lines) - _MOST_LINES} more" if len(lines) > _MOST_LINES else shown


_MOST_LINES = 5

"""The one family of errors, and the exit code that belongs to each.

    AdvisorError            anything this package raises on purpose   exit 3 (our fault)
    └── InputError          what was typed or written cannot be used  exit 2 (usage)

An `InputError` carries every problem found, not only the first: a maker mends a file once.
Whatever else reaches the command line is a surprise, and so our fault.
"""

from __future__ import annotations

import re
from collections.abc import Callable, Iterable
from enum import IntEnum
from typing import ClassVar

from msgspec import Struct

MOST_SHOWN = 20
"""Problems printed before the rest is only counted; more than a screen helps nobody."""

_LONGEST_COMPARED = 80
_LONGEST_QUOTED = 40
_SHORTEST = 0.5
"""Half of a word was never meant by it, as "on" by "iron", but its beginning: estimate."""
# Terminal codes, and characters that are not seen or that turn the direction of what follows.
_UNSEEN = (
    r"\x00-\x08\x0b-\x1f\x7f-\x9f\u00ad\u034f\u061c\u115f\u1160\u17b4\u17b5\u180b-\u180f"
    r"\u200b-\u200f\u2028-\u202e\u2060-\u206f\u3164\ufeff\uffa0\ufff0-\ufffb"
    r"\U000e0000-\U000e0fff"
)
_UNPRINTABLE = re.compile(f"[{_UNSEEN}]")
_NOT_ONE_LINE = re.compile(f"[\t\n{_UNSEEN}]")


class Exit(IntEnum):
    """The exit codes of the command line."""

    CLEAR = 0
    CONFLICT = 1
    USAGE = 2
    FAULT = 3
    INTERRUPTED = 130


class Where(Struct, frozen=True):
    """A place in a file; line and column count from 1, and None means the file as a whole."""

    file: str
    line: int | None = None
    column: int | None = None

    def __str__(self) -> str:
        parts = [self.file]
        if self.line is not None:
            parts.append(str(self.line))
            if self.column is not None:
                parts.append(str(self.column))
        return ":".join(parts)


class Problem(Struct, frozen=True):
    """One thing that is wrong with what was given, in words for the person who gave it.

    `message` is the fault without a full stop, `expected` completes the sentence
    "Expected …", and `nearest` holds known names that may have been meant.
    """

    message: str
    where: Where | None = None
    expected: str | None = None
    nearest: tuple[str, ...] = ()

    def __str__(self) -> str:
        """Return the problem as one line, whatever it quotes from the input."""
        text = self.message
        if self.expected:
            text = f"{_stopped(text)} Expected {_stopped(self.expected)}"
        if self.nearest:
            text = f"{_stopped(text)} Did you mean {_alternatives(self.nearest)}?"
        if self.where is not None:
            text = f"{self.where}: {text}"
        return _one_line(text)


def in_file_order(problem: Problem) -> tuple[int, int]:
    """Sorts problems as a person meets them; one without a place comes first."""
    where = problem.where
    return (where.line or 0, where.column or 0) if where is not None else (0, 0)


class AdvisorError(Exception):
    """Anything this package raises on purpose."""

    exit: ClassVar[Exit] = Exit.FAULT


class InputError(AdvisorError):
    """Input that cannot be used, with every problem found in it.

    Takes one problem, several, or a bare sentence when there is no place to point at.
    """

    exit: ClassVar[Exit] = Exit.USAGE

    def __init__(self, problems: Problem | str | Iterable[Problem]) -> None:
        if isinstance(problems, str):
            problems = Problem(problems)
        if isinstance(problems, Problem):
            problems = (problems,)
        self.problems: tuple[Problem, ...] = tuple(problems)
        if not self.problems:
            raise ValueError("an InputError needs at least one problem")
        super().__init__(self.problems)

    def __str__(self) -> str:
        lines = [str(problem) for problem in self.problems[:MOST_SHOWN]]
        unshown = len(self.problems) - len(lines)
        if unshown:
            lines.append(f"and {unshown} more")
        return "\n".join(lines)


def nearest(word: str, known: Iterable[str], n: int = 3) -> tuple[str, ...]:
    """Return at most `n` known names that look like `word`, likest first, in their own spelling.

    Capitals make no difference. The order of `known` matters only between names that
    differ by nothing but capitals, so a set may be passed.
    """
    if not word.strip() or n < 1:
        return ()
    import difflib  # noqa: PLC0415 - only needed once something has gone wrong

    spelling: dict[str, str] = {}
    for name in sorted(known):
        spelling.setdefault(name.casefold(), name)
    said = word.strip().casefold()[:_LONGEST_COMPARED]
    close = difflib.get_close_matches(said, spelling, n)
    return tuple(
        spelling[name]
        for name in close
        if len(name) > len(said) * _SHORTEST or said.startswith(name)
    )


def shown(text: str) -> str:
    """A word of the input in quotes, cut where it is far too long."""
    return f"'{text}'" if len(text) <= _LONGEST_QUOTED else f"'{text[:_LONGEST_QUOTED]}…'"


def _stopped(sentence: str) -> str:
    return sentence if sentence.endswith((".", "!", "?")) else f"{sentence}."


def _alternatives(names: tuple[str, ...]) -> str:
    quoted = [f"'{name}'" for name in names]
    if len(quoted) == 1:
        return quoted[0]
    return f"{', '.join(quoted[:-1])} or {quoted[-1]}"


def _one_line(text: str) -> str:
    # Input is quoted in messages; a line break or a terminal code in it must stay visible text.
    return _NOT_ONE_LINE.sub(lambda found: _spelled(found[0]), text)


def json_escape(letter: str) -> str:
    """A character as JSON spells it, for text that a terminal must not obey."""
    units = letter.encode("utf-16-be")
    return "".join(f"\\u{a:02x}{b:02x}" for a, b in zip(units[::2], units[1::2], strict=True))


def visible(text: str, spell: Callable[[str], str] | None = None) -> str:
    """A text of lines in which everything that is not seen, or does something, is spelled out.

    Names, paths and knowledge come from anybody: a terminal must never obey them, and a mark that
    turns the reading direction must not hide what is written. `spell` writes one character.
    """
    how = spell or _spelled
    return _UNPRINTABLE.sub(lambda found: how(found[0]), text)


def _spelled(letter: str) -> str:
    number = ord(letter)
    if letter in "\t\n\r":
        return repr(letter)[1:-1]
    if number < 0x100:
        return f"\\x{number:02x}"
    return f"\\u{number:04x}" if number < 0x10000 else f"\\U{number:08x}"


def for_shell(text: str) -> str:
    """A word as it can be typed into a shell: bare, in double quotes, or quoted for good."""
    if re.fullmatch(r"[\w./:@%+=,-]+", text) and not text.startswith("-"):
        return text
    if re.fullmatch(r"[\w ./:@%+=,;()&'’-]+", text):
        return f'"{text}"'
    import shlex  # noqa: PLC0415 - odd names are rare

    return shlex.quote(visible(text))

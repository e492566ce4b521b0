"""Reads a YAML file into plain data, and remembers the line and column of every key and value.

Files come from anybody, so only the plain part of YAML 1.2 is read: no anchors, aliases or
tags (small files that unfold into huge ones), one document, text keys, each key once, no more
than 1 MB and 40 levels. `no`, `on` and dates are words, as in YAML 1.2. Everything wrong
becomes an `InputError` with file:line:column, as many problems at once as can be found.
"""

from __future__ import annotations

import math
import re
import stat
from collections.abc import Iterator, Mapping
from dataclasses import dataclass, field
from pathlib import Path
from typing import Any, NoReturn, TypeAlias

from advisor.errors import InputError, Problem, Where

Steps: TypeAlias = tuple[str | int, ...]
"""The way to a value from the top of a file: ("seams", 2, "layers", 0)."""

Data: TypeAlias = Any
"""dict, list, str, int, float, bool or None, nested; a shape is for a schema to check."""

MOST_BYTES = 1_000_000
MOST_LEVELS = 40
_MOST_DIGITS = 40

_NULL = frozenset({"", "~", "null", "Null", "NULL"})
_BOOL = {"true": True, "True": True, "TRUE": True, "false": False, "False": False, "FALSE": False}
_INT = re.compile(r"[-+]?[0-9]+")
_FLOAT = re.compile(r"[-+]?(?:\.[0-9]+|[0-9]+(?:\.[0-9]*)?)(?:[eE][-+]?[0-9]+)?")
_NOT_FINITE = re.compile(r"[-+]?\.(?:inf|Inf|INF)|\.(?:nan|NaN|NAN)")
_BINARY = re.compile(r"[\x00-\x08\x0b\x0c\x0e-\x1f\x7f\x80-\x84\x86-\x9f\ufffe\uffff]")
_UTF16 = (b"\xff\xfe", b"\xfe\xff")


@dataclass(frozen=True, slots=True)
class Positions:
    """Line and column, both from 1, of each key and each value, by the way to it."""

    keys: Mapping[Steps, tuple[int, int]]
    values: Mapping[Steps, tuple[int, int]]

    def __contains__(self, steps: Steps) -> bool:
        return steps in self.values

    def value(self, steps: Steps) -> tuple[int, int]:
        """Return where the value at `steps`, or the nearest thing above it, begins."""
        return self._deepest(steps, self.values)

    def key(self, steps: Steps) -> tuple[int, int]:
        """Return where the key of `steps` stands; an entry of a list has no key but itself."""
        return self.keys.get(steps) or self._deepest(steps, self.values)

    def _deepest(self, steps: Steps, known: Mapping[Steps, tuple[int, int]]) -> tuple[int, int]:
        for length in range(len(steps), -1, -1):
            place = known.get(steps[:length])
            if place is not None:
                return place
        return (1, 1)


@dataclass(frozen=True, slots=True)
class Document:
    """One YAML file that was read: its data, the positions in it, and the name it goes by."""

    data: Data
    positions: Positions
    file: str

    def where(self, *steps: str | int) -> Where:
        """Return the place of the value at `steps`, or of the deepest thing known above it."""
        return Where(self.file, *self.positions.value(steps))

    def where_key(self, *steps: str | int) -> Where:
        """Return the place of the key that leads to `steps`."""
        return Where(self.file, *self.positions.key(steps))


def read_yaml(path: Path) -> Document:
    """Return what a YAML file says.

    Raises:
        InputError: the file is missing, unreadable, or holds anything this room refuses.
    """
    file = str(path)
    return parse_yaml(_decode(_read_bytes(Path(path), file), file), file)


def parse_yaml(text: str, file: str) -> Document:
    """Return what a YAML text says; `file` is the name to put before line and column.

    Raises:
        InputError: with every problem found.
    """
    _refuse_text(text, file)
    from ruamel.yaml import YAML  # noqa: PLC0415 - heavy, and a warm start reads no YAML
    from ruamel.yaml.error import MarkedYAMLError, YAMLError  # noqa: PLC0415

    builder = _Builder(file)
    try:
        data = builder.document(YAML(typ="safe", pure=True).parse(text))
    except MarkedYAMLError as error:
        mark = error.problem_mark or error.context_mark
        builder.stop(_plain_words(error.problem or error.context or ""), mark)
    except (YAMLError, RecursionError, ValueError, IndexError) as error:
        # The reader is a hand-written scanner; odd input must not become our traceback.
        builder.stop(_plain_words(str(error).partition("\n")[0]), None)
    if builder.problems:
        raise InputError(builder.problems)
    return Document(data, Positions(builder.keys, builder.values), file)


def _read_bytes(path: Path, file: str) -> bytes:
    try:
        found = path.stat()
        if stat.S_ISDIR(found.st_mode):
            _refuse("this is a folder, not a file", Where(file))
        if not stat.S_ISREG(found.st_mode):  # a pipe or device could keep us waiting for ever
            _refuse("this is not an ordinary file", Where(file))
        with path.open("rb") as stream:
            raw = stream.read(MOST_BYTES + 1)
    except (FileNotFoundError, NotADirectoryError):
        _refuse("no such file", Where(file))
    except PermissionError:
        _refuse("this file may not be read", Where(file))
    except (OSError, ValueError) as error:
        reason = getattr(error, "strerror", None) or str(error)
        _refuse(f"this file cannot be read ({reason})", Where(file))
    if len(raw) > MOST_BYTES:
        _refuse("too large: at most 1 MB", Where(file))
    return raw


def _decode(raw: bytes, file: str) -> str:
    if raw.startswith(_UTF16):
        _refuse("this file is UTF-16; save it as UTF-8", Where(file))
    nul = raw.find(b"\0")
    if nul >= 0:
        line, column = raw.count(b"\n", 0, nul) + 1, nul - raw.rfind(b"\n", 0, nul)
        _refuse("this is a binary file, not text", Where(file, line, column))
    try:
        return raw.decode("utf-8-sig")
    except UnicodeDecodeError as error:
        # Bytes before the fault are sound, so they count as characters.
        before = raw[: error.start].decode("utf-8-sig")
        _refuse("not UTF-8 text; save the file as UTF-8", _place(before, len(before), file))


def _refuse_text(text: str, file: str) -> None:
    if len(text) > MOST_BYTES:
        _refuse("too large: at most 1 MB", Where(file))
    binary = _BINARY.search(text)
    if binary is not None:
        _refuse(
            f"a character that is not text (U+{ord(binary[0]):04X})",
            _place(text, binary.start(), file),
        )
    if not text.strip():
        _refuse("this file is empty", Where(file))


def _place(text: str, offset: int, file: str) -> Where:
    return Where(file, text.count("\n", 0, offset) + 1, offset - text.rfind("\n", 0, offset))


def _refuse(message: str, where: Where) -> NoReturn:
    raise InputError(Problem(message, where)) from None


def _plain_words(problem: str) -> str:
    """Return the reader's complaint as a maker can use it."""
    if "'\\t'" in problem or "\t" in problem:
        return "a tab is used for indentation; use spaces"
    for sign, words in _COMPLAINTS.items():
        if sign in problem:
            return words
    return f"this is not YAML ({problem})" if problem else "this is not YAML"


_COMPLAINTS = {
    "mapping values are not allowed": "a second ': ' on one line, or a line indented too far; "
    "put quotes round text that holds ': '",
    "could not find expected ':'": "a key without ':' after it",
    "expected <block end>": "this line does not fit the lines above it; check its indentation",
    "found unexpected end of stream": "a quotation mark is opened and never closed",
    "cannot start any token": "a word may not begin with this character; put it in quotes",
    "expected ',' or ']'": "a list opened with '[' is not closed, or lacks a comma",
    "expected ',' or '}'": "a group opened with '{' is not closed, or lacks a comma",
}


@dataclass(slots=True)
class _Builder:
    """Builds data from the reader's events, refusing whatever is not plain data."""

    file: str
    problems: list[Problem] = field(default_factory=list)
    keys: dict[Steps, tuple[int, int]] = field(default_factory=dict)
    values: dict[Steps, tuple[int, int]] = field(default_factory=dict)

    def document(self, events: Iterator[Any]) -> Data:
        data: Data = None
        documents = 0
        for event in events:
            kind = _kind(event)
            if kind == "DocumentStart":
                documents += 1
                if documents > 1:
                    self.stop("a second document ('---'); only one is read from a file", event)
            elif kind not in _FRAME:
                data = self._value(event, events, ())
        if not documents or (data is None and not self.problems):
            self.stop("this file is empty: nothing is written in it", None)
        return data

    def stop(self, message: str, at: Any) -> NoReturn:
        """Raise everything found so far and one thing more that ends the reading."""
        raise InputError([*self.problems, Problem(message, self._where(at))]) from None

    def _note(self, message: str, at: Any) -> None:
        self.problems.append(Problem(message, self._where(at)))

    def _where(self, at: Any) -> Where:
        mark = getattr(at, "start_mark", at)
        return Where(self.file) if mark is None else Where(self.file, *_line_column(mark))

    def _value(self, event: Any, events: Iterator[Any], steps: Steps) -> Data:
        kind = _kind(event)
        self.values[steps] = _line_column(event.start_mark)
        self._refuse_marks(event, kind)
        if kind == "Scalar":
            return self._scalar(event)
        if kind == "Alias":
            return None
        if len(steps) >= MOST_LEVELS:
            self.stop(f"nested too deeply: at most {MOST_LEVELS} levels", event)
        if kind == "SequenceStart":
            return self._sequence(events, steps)
        return self._mapping(events, steps)

    def _refuse_marks(self, event: Any, kind: str) -> None:
        if kind == "Alias":
            self._note(f"the alias '*{event.anchor}' is not read; write the value out", event)
        elif event.anchor is not None:
            self._note(f"the anchor '&{event.anchor}' is not read; write the value out", event)
        if kind != "Alias" and event.tag is not None:
            tag = str(event.tag).replace("tag:yaml.org,2002:", "!!")
            self._note(f"the tag '{tag}' is not read; leave it out", event)

    def _sequence(self, events: Iterator[Any], steps: Steps) -> list[Data]:
        found: list[Data] = []
        for event in events:
            if _kind(event) == "SequenceEnd":
                break
            found.append(self._value(event, events, (*steps, len(found))))
        return found

    def _mapping(self, events: Iterator[Any], steps: Steps) -> dict[str, Data]:
        found: dict[str, Data] = {}
        for event in events:
            if _kind(event) == "MappingEnd":
                break
            key = self._key(event)
            here = (*steps, key)
            if key in found:
                first = self.keys[here]
                self._note(f"the key '{key}' is here and already on line {first[0]}", event)
                _Builder(self.file, self.problems)._value(next(events), events, here)
                continue
            self.keys[here] = _line_column(event.start_mark)
            found[key] = self._value(next(events), events, here)
        return found

    def _key(self, event: Any) -> str:
        kind = _kind(event)
        if kind in ("SequenceStart", "MappingStart"):
            self.stop("a key must be a word, not a list or a group", event)
        self._refuse_marks(event, kind)
        if kind == "Alias":
            return f"*{event.anchor}"
        text: str = event.value
        if not _is_plain(event):
            return text
        if text in _NULL or text in _BOOL or _INT.fullmatch(text) or _FLOAT.fullmatch(text):
            shown = text or "(nothing)"
            self._note(f"the key {shown} is not text; put it in quotes if it is meant", event)
        return text

    def _scalar(self, event: Any) -> str | int | float | bool | None:
        text: str = event.value
        if not _is_plain(event):
            return text
        if text in _NULL:
            return None
        if text in _BOOL:
            return _BOOL[text]
        if _NOT_FINITE.fullmatch(text):
            self._note(f"{text} is not a number that can be used", event)
            return None
        number = int if _INT.fullmatch(text) else float if _FLOAT.fullmatch(text) else None
        if number is None:
            return text
        value = number(text) if len(text) <= _MOST_DIGITS else math.inf
        if not math.isfinite(value):
            self._note("this number is too long or too large", event)
            return None
        return value


_FRAME = frozenset({"StreamStart", "StreamEnd", "DocumentEnd"})


def _kind(event: Any) -> str:
    return type(event).__name__.removesuffix("Event")


def _is_plain(event: Any) -> bool:
    # A value is a number or a yes/no only when written without quotes.
    return bool(event.implicit[0])


def _line_column(mark: Any) -> tuple[int, int]:
    return mark.line + 1, mark.column + 1

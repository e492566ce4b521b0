"""Reads a YAML file into plain data, and remembers the line and column of every key and value.

Files come from anybody, so only the plain part of YAML 1.2 is read: no anchors, aliases or
tags (small files that unfold into huge ones), one document, text keys, each key once, no more
than 1 MB and 40 levels. `no`, `on` and dates are words, as in YAML 1.2. Everything wrong
becomes an `InputError` with file:line:column, as many problems at once as can be found.
"""

from __future__ import annotations

import re
import stat
from collections.abc import Iterator, Mapping
from pathlib import Path
from typing import Any, NoReturn

from msgspec import Struct

from advisor.errors import InputError, Problem, Where
from advisor.textio.yamltree import MOST_LEVELS, Builder, Data, Steps

__all__ = [
    "MOST_BYTES",
    "MOST_LEVELS",
    "Data",
    "Document",
    "Positions",
    "Steps",
    "events_of",
    "parse_yaml",
    "read_text",
    "read_yaml",
]

MOST_BYTES = 1_000_000
_BINARY = re.compile(r"[\x00-\x08\x0b\x0c\x0e-\x1f\x7f\x80-\x84\x86-\x9f\ufffe\uffff]")
_UTF16 = (b"\xff\xfe", b"\xfe\xff")


class Positions(Struct, frozen=True):
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


class Document(Struct, frozen=True):
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
    return parse_yaml(read_text(path), str(path))


def read_text(path: Path) -> str:
    """Return the text of a file of at most 1 MB, without a byte order mark, line ends as they are.

    Raises:
        InputError: the file is missing, unreadable, too large, or not UTF-8 text.
    """
    file = str(path)
    return _decode(_read_bytes(Path(path), file), file)


def parse_yaml(text: str, file: str) -> Document:
    """Return what a YAML text says; `file` is the name to put before line and column.

    Raises:
        InputError: with every problem found.
    """
    _refuse_text(text, file)
    builder = Builder(file)
    data = builder.document(_told(text, builder))
    if builder.problems:
        raise InputError(builder.problems)
    return Document(data, Positions(builder.keys, builder.values), file)


def events_of(text: str) -> Iterator[Any]:
    """The events of a YAML text, each with `start_mark` and `end_mark` (index, line, column).

    The reader is libyaml, which is written in C: the same events as the one in Python gives, in
    a twentieth of the time. Where it was not built, the one in Python serves.
    """
    import yaml  # noqa: PLC0415 - a warm start reads no YAML

    return iter(yaml.parse(text, Loader=getattr(yaml, "CLoader", yaml.Loader)))


def _told(text: str, builder: Builder) -> Iterator[Any]:
    """The events; where the reader gives up, its complaint in words for the maker."""
    from yaml.error import MarkedYAMLError, YAMLError  # noqa: PLC0415

    try:
        yield from events_of(text)
    except MarkedYAMLError as error:
        mark = error.problem_mark or error.context_mark
        said = _complaint(error, mark, text)
        opened = error.context_mark
        if opened is not None and "closed" in said and opened.line < mark.line:
            mark = opened  # what is never closed is shown where it was opened
        builder.stop(said, mark)
    except (YAMLError, RecursionError, ValueError, IndexError) as error:
        # Odd input must not become our traceback, whatever the reader makes of it.
        builder.stop(_plain_words(str(error).partition("\n")[0]), None)


def _complaint(error: Any, mark: Any, text: str) -> str:
    if mark is not None and text[mark.index : mark.index + 1] == "\t":
        return "a tab is used for indentation; use spaces"
    return _plain_words(error.problem or error.context or "")


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


_KINDS: Mapping[bytes, str] = {
    b"\x89PNG": "a picture",
    b"\xff\xd8\xff": "a picture",
    b"GIF8": "a picture",
    b"II*\x00": "a picture",
    b"MM\x00*": "a picture",
    b"BM": "a picture",
    b"%PDF": "a PDF",
    b"PK\x03\x04": "a packed file, such as a zip or a text of an office program",
    b"\xd0\xcf\x11\xe0": "a text or a table of an office program",
    b"{\\rtf": "a text of an office program",
    b"\x1f\x8b": "a packed file",
    b"<!DOCTYPE": "a web page",
    b"<!doctype": "a web page",
    b"<html": "a web page",
    b"<svg": "a picture",
    b"<?xml": "a picture or a table in XML",
}
"""How files begin that are no project, and what they are."""
_ASKED = "this is {}, not a project file"


def _refuse_kind(raw: bytes, file: str) -> None:
    """Name the kind of a file that can be no project."""
    kind = next((kind for begin, kind in _KINDS.items() if raw.startswith(begin)), None)
    if raw[4:8] == b"ftyp" or (raw[:4] == b"RIFF" and raw[8:12] == b"WEBP"):
        kind = "a picture or a film"
    if kind is not None and not (
        kind == "a picture" and raw.startswith(b"BM") and b"\0" not in raw
    ):
        problem = Problem(_ASKED.format(kind), Where(file), "text as `advisor start FILE` writes")
        raise InputError(problem)


def _decode(raw: bytes, file: str) -> str:
    _refuse_kind(raw, file)
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
    for sign, words in _COMPLAINTS.items():
        if sign in problem:
            return words
    return f"this is not YAML ({problem})" if problem else "this is not YAML"


_UNFIT = "this line does not fit the lines above it; check its indentation"
_UNCLOSED = "a list opened with '[' or a group opened with '{' here is not closed, or lacks a word"
_COMPLAINTS = {
    "mapping values are not allowed": "a second ': ' on one line, or a line indented too far; "
    "put quotes round text that holds ': '",
    "could not find expected ':'": "a key without ':' after it",
    "expected <block end>": _UNFIT,
    "did not find expected key": _UNFIT,
    "expected '-' indicator": _UNFIT,
    "block sequence entries are not allowed": "a list may not begin here; put it on its own lines",
    "found unexpected end of stream": "a quotation mark is opened and never closed",
    "unexpected document indicator": "a quotation mark is opened and never closed",
    "cannot start any token": "a word may not begin with this character; put it in quotes",
    "expected node content": _UNCLOSED,
    "expected ',' or ']'": "a list opened with '[' is not closed, or lacks a comma",
    "expected ',' or '}'": "a group opened with '{' is not closed, or lacks a comma",
    "found unexpected ':'": "a ':' here needs a space and a word behind it",
    "unknown escape": "a '\\' in double quotes begins no sign that is known; use single quotes",
    "violates indentation": "a tab is used for indentation; use spaces",
    "nesting depth": f"nested too deeply: at most {MOST_LEVELS} levels",
    "expected <document start>": "this is left over behind the end of what is written here",
}

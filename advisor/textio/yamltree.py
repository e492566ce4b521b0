"""Builds plain data from the events of a YAML text, refusing whatever is not plain data.

What is written without quotes is read as YAML 1.2 reads it: `no`, `on` and dates are words.
"""

from __future__ import annotations

import math
import re
from collections.abc import Iterator
from typing import Any, NoReturn, TypeAlias

from msgspec import Struct, field

from advisor.errors import InputError, Problem, Where

Steps: TypeAlias = tuple[str | int, ...]
"""The way to a value from the top of a file: ("seams", 2, "layers", 0)."""

Data: TypeAlias = Any
"""dict, list, str, int, float, bool or None, nested; a shape is for a schema to check."""

MOST_LEVELS = 40
MOST_PROBLEMS = 1000
_MOST_DIGITS = 40

_NULL = frozenset({"", "~", "null", "Null", "NULL"})
_BOOL = {"true": True, "True": True, "TRUE": True, "false": False, "False": False, "FALSE": False}
_INT = re.compile(r"[-+]?[0-9]+")
_FLOAT = re.compile(r"[-+]?(?:\.[0-9]+|[0-9]+(?:\.[0-9]*)?)(?:[eE][-+]?[0-9]+)?")
_NOT_FINITE = re.compile(r"[-+]?\.(?:inf|Inf|INF)|\.(?:nan|NaN|NAN)")


class Builder(Struct):
    """Builds data from the reader's events, refusing whatever is not plain data."""

    file: str
    problems: list[Problem] = field(default_factory=list)
    keys: dict[Steps, tuple[int, int]] = field(default_factory=dict)
    values: dict[Steps, tuple[int, int]] = field(default_factory=dict)

    def document(self, events: Iterator[Any]) -> Data:
        """The data of the one document; raises InputError for what ends the reading."""
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
        if len(self.problems) >= MOST_PROBLEMS:
            raise InputError(self.problems) from None

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
                Builder(self.file, self.problems)._value(next(events), events, here)
                continue
            self.keys[here] = _line_column(event.start_mark)
            value = next(events)
            found[key] = self._value(value, events, here)
            if _is_nothing(value):  # its place is behind the colon, not where the next thing is
                self.values[here] = _after_colon(event)
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


def _is_nothing(event: Any) -> bool:
    return _kind(event) == "Scalar" and event.start_mark.index == event.end_mark.index


def _after_colon(key: Any) -> tuple[int, int]:
    return key.end_mark.line + 1, key.end_mark.column + 2


def _line_column(mark: Any) -> tuple[int, int]:
    return mark.line + 1, mark.column + 1

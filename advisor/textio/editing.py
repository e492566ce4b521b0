"""Changes single values of a YAML text and leaves all the rest of it as it was written.

Each change is made in the text itself, beside what stands there. What comes out is read again,
and is given back only if it says just what was wanted.
"""

from __future__ import annotations

import copy
from collections.abc import Sequence
from typing import Any

from advisor.errors import InputError, Problem, Where
from advisor.textio import yamledit
from advisor.textio.flow import flow
from advisor.textio.yamlfile import Data, Steps, parse_yaml

Edit = tuple[Steps, Data]
"""The way to a value, and what shall stand there; None takes its key or list entry away."""


def edited(text: str, edits: Sequence[Edit], file: str) -> str:
    """The text with each edit made, one after the other.

    A way may lead to a key that is not there yet, or just beyond the end of a list; what stands
    above it must be. Line ends stay as they are.

    Raises:
        InputError: the text is no YAML, or an edit has no place in it.
    """
    for steps, value in edits:
        text = _one(text, steps, value, file)
    return text


def _one(text: str, steps: Steps, value: Data, file: str) -> str:
    data = parse_yaml(text, file).data
    wanted = _applied(copy.deepcopy(data), steps, value)
    if wanted == data:
        return text
    try:
        new = _in_place(text, steps, value)
        if parse_yaml(new, file).data == wanted:
            return new
    except (InputError, KeyError, IndexError, TypeError, AttributeError):
        pass  # the file is written in a shape that this does not know
    where = ", ".join(str(step) for step in steps)
    raise InputError(Problem(f"'{where}' cannot be changed as this is written", Where(file)))


def _applied(data: Data, steps: Steps, value: Data) -> Data:
    """The data with a value set, or taken away where it is None."""
    at: Any = data
    for step in steps[:-1]:
        if not _has(at, step):
            raise InputError(f"there is no '{step}' to change")
        at = at[step]
    last = steps[-1]
    if not isinstance(at, dict if isinstance(last, str) else list):
        raise InputError(f"there is no '{last}' to change")
    group: Any = at
    if value is not None and isinstance(group, list) and last == len(group):
        group.append(value)
    elif value is not None:
        group[last] = value
    elif _has(group, last):
        del group[last]
    return data


def _has(at: Any, step: str | int) -> bool:
    if isinstance(step, str):
        return isinstance(at, dict) and step in at
    return isinstance(at, list) and step < len(at)


def _in_place(text: str, steps: Steps, value: Data) -> str:
    """The text with the value set where it stands."""
    node = yamledit.tree_of(text)
    for step in steps[:-1]:
        node = node.value[step] if isinstance(step, int) else yamledit.child(node, step)
    last = steps[-1]
    if isinstance(last, int):
        if last == len(node.value):
            return _appended(text, node, flow(value))
        spans = [_span(text, item, item) for item in node.value]
        if value is None:
            return _without(text, node, spans, last)
        return yamledit.replaced(text, *spans[last], flow(value))
    pair = yamledit.pair_of(node, last)
    if pair is None:
        return _added(text, node, f"{flow(last)}: {flow(value)}")
    if value is None:
        spans = [_span(text, key, item) for key, item in node.value]
        return _without(text, node, spans, node.value.index(pair))
    colon = text.index(":", yamledit.end(pair[0])) + 1
    return yamledit.replaced(text, colon, _span(text, *pair)[1], f" {flow(value)}")


def _span(text: str, first: Any, last: Any) -> tuple[int, int]:
    """Where something begins and where its last sign stands; a long text may end with a line."""
    begin, stop = yamledit.start(first), yamledit.end(last)
    return begin, begin + len(text[begin:stop].rstrip())


def _added(text: str, node: Any, words: str) -> str:
    """One key more at the end of a group."""
    if not node.value:
        return yamledit.replaced(text, yamledit.start(node) + 1, yamledit.end(node) - 1, words)
    end = _span(text, *node.value[-1])[1]
    if node.flow_style:
        return yamledit.replaced(text, end, end, f", {words}")
    end = _line_end(text, end)
    indent = " " * int(node.value[0][0].start_mark.column)
    return yamledit.replaced(text, end, end, f"{yamledit.line_end(text)}{indent}{words}")


def _appended(text: str, node: Any, words: str) -> str:
    """One entry more at the end of a list."""
    if not node.value:
        return yamledit.replaced(text, yamledit.start(node) + 1, yamledit.end(node) - 1, words)
    end = _span(text, node.value[-1], node.value[-1])[1]
    if node.flow_style:
        return yamledit.replaced(text, end, end, f", {words}")
    end = _line_end(text, end)
    indent = " " * int(node.start_mark.column)
    return yamledit.replaced(text, end, end, f"{yamledit.line_end(text)}{indent}- {words}")


def _without(text: str, node: Any, spans: list[tuple[int, int]], at: int) -> str:
    """The text without one key of a group, or one entry of a list."""
    start, end = spans[at]
    follows = spans[at + 1][0] if at + 1 < len(spans) else None
    if node.flow_style:
        if follows is not None:
            return yamledit.replaced(text, start, follows, "")
        return yamledit.replaced(text, spans[at - 1][1] if at else start, end, "")
    first = text.rfind("\n", 0, start) + 1
    dashed = isinstance(node.value[at], tuple) and text[first:start].strip()
    if dashed:  # the first key, on the line of its dash
        return yamledit.replaced(text, start, follows or end, "")
    below = text.find("\n", end)
    return yamledit.replaced(text, first, len(text) if below < 0 else below + 1, "")


def _line_end(text: str, at: int) -> int:
    """Where the line that holds a place ends, before its own end signs."""
    end = text.find("\n", at)
    if end < 0:
        return len(text)
    return end - 1 if text[end - 1] == "\r" else end

"""Changes single values of a YAML text and leaves all the rest of it as it was written.

Each change is made in the text itself, beside what stands there; only a shape that this cannot
do goes through the round trip of the YAML library, which keeps comments but may set lines anew.
Either way the result is read again, and is given back only if it says just what was wanted.
"""

from __future__ import annotations

import copy
import io
from collections.abc import Sequence
from typing import Any

from advisor.errors import InputError
from advisor.textio.flow import flow
from advisor.textio.yamlfile import Data, Steps, parse_yaml

Edit = tuple[Steps, Data]
"""The way to a value, and what shall stand there; None takes its key or list entry away."""


def edited(text: str, edits: Sequence[Edit], file: str) -> str:
    """The text with each edit made, one after the other.

    A way may lead to a key that is not there yet; what stands above it must be. Line ends stay
    as they are.

    Raises:
        InputError: the text is no YAML, or an edit has no place in it.
    """
    windows = "\r\n" in text and text.count("\r\n") == text.count("\n")
    plain = text.replace("\r\n", "\n") if windows else text
    for steps, value in edits:
        plain = _one(plain, steps, value, file)
    return plain.replace("\n", "\r\n") if windows else plain


def _one(text: str, steps: Steps, value: Data, file: str) -> str:
    data = parse_yaml(text, file).data
    wanted = _applied(copy.deepcopy(data), steps, value)
    if wanted == data:
        return text
    for write in (_in_place, _round_trip):
        try:
            new = write(text, steps, value)
            if new is not None and parse_yaml(new, file).data == wanted:
                return new
        except (InputError, KeyError, IndexError, TypeError):
            continue  # this way of writing does not suit the shape of the file
    where = ", ".join(str(step) for step in steps)
    raise InputError(f"{file}: '{where}' cannot be changed as this file is written")


def _applied(data: Data, steps: Steps, value: Data) -> Data:
    """The data with a value set, or taken away where it is None."""
    at: Any = data
    for step in steps[:-1]:
        if not _is_group(at) or (isinstance(step, str) and step not in at):
            raise InputError(f"there is no '{step}' to change")
        at = at[step]
    if not _is_group(at):
        raise InputError(f"'{steps[-2]}' has nothing below it to change")
    if value is not None:
        at[steps[-1]] = value
    elif isinstance(steps[-1], int) or steps[-1] in at:
        del at[steps[-1]]
    return data


def _is_group(value: Any) -> bool:
    return isinstance(value, dict | list)


def _in_place(text: str, steps: Steps, value: Data) -> str | None:
    """The text with the value set where it stands; None where the shape is another."""
    from ruamel.yaml import YAML  # noqa: PLC0415 - heavy, and only a change needs it

    node = YAML(typ="rt", pure=True).compose(text)
    for step in steps[:-1]:
        node = _below(node, step)
    last = steps[-1]
    if type(node).__name__ == "SequenceNode":
        return _entry(text, node, int(last), value)
    pairs = node.value
    at = next((i for i, (key, _) in enumerate(pairs) if key.value == last), None)
    if at is None:
        return _added(text, node, f"{flow(last)}: {flow(value)}")
    if value is not None:
        start, end = _start(pairs[at][1]), _end(text, pairs[at][1])
        gap = "" if text[start - 1] in " \n" else " "
        if text[start - 1] == "\n" or "\n" in text[_end(text, pairs[at][0]) : start]:
            start, gap = _end(text, pairs[at][0]) + 1, " "
        return text[:start] + gap + flow(value) + text[end:]
    spans = [(_start(key), _end(text, item)) for key, item in pairs]
    return _without(text, node, spans, at)


def _entry(text: str, node: Any, at: int, value: Data) -> str | None:
    spans = [(_start(item), _end(text, item)) for item in node.value]
    if value is not None:
        start, end = spans[at]
        return text[:start] + flow(value) + text[end:]
    return _without(text, node, spans, at)


def _below(node: Any, step: str | int) -> Any:
    if isinstance(step, int):
        return node.value[step]
    return next(value for key, value in node.value if key.value == step)


def _start(node: Any) -> int:
    return int(node.start_mark.index)


def _end(text: str, node: Any) -> int:
    """Where the last sign of a value stands; a block ends with its own last value."""
    kind = type(node).__name__
    if kind == "ScalarNode" or node.flow_style or not node.value:
        end = int(node.end_mark.index)
        return len(text[:end].rstrip("\n")) if kind == "ScalarNode" else end
    last = node.value[-1]
    return _end(text, last[1] if isinstance(last, tuple) else last)


def _line_end(text: str, at: int) -> int:
    end = text.find("\n", at)
    return len(text) if end < 0 else end


def _added(text: str, node: Any, words: str) -> str | None:
    """One key more at the end of a group."""
    if not node.value:
        return None
    end = _end(text, node.value[-1][1])
    if node.flow_style:
        return text[:end] + ", " + words + text[end:]
    end = _line_end(text, end)
    indent = " " * int(node.value[0][0].start_mark.column)
    return f"{text[:end]}\n{indent}{words}{text[end:]}"


def _without(text: str, node: Any, spans: list[tuple[int, int]], at: int) -> str | None:
    """The text without one key of a group, or one entry of a list."""
    if len(spans) == 1:
        return None
    start, end = spans[at]
    if node.flow_style:
        if at + 1 < len(spans):
            return text[:start] + text[spans[at + 1][0] :]
        return text[: spans[at - 1][1]] + text[end:]
    first = text.rfind("\n", 0, start) + 1
    if text[first:start].strip(" ").rstrip("-").strip(" ") and text[first:start].strip():
        return None
    is_entry = type(node).__name__ == "SequenceNode"
    if not is_entry and text[first:start].strip():  # the first key, on the line of its dash
        return text[:start] + text[spans[at + 1][0] :]
    return text[:first] + text[_line_end(text, end) + 1 :]


def _round_trip(text: str, steps: Steps, value: Data) -> str:
    from ruamel.yaml import YAML  # noqa: PLC0415

    yaml = YAML(typ="rt")
    yaml.preserve_quotes = True
    yaml.width = 100_000
    yaml.indent(mapping=2, sequence=4, offset=2)
    data = yaml.load(text)
    _applied(data, steps, value)
    out = io.StringIO()
    yaml.dump(data, out)
    return out.getvalue()

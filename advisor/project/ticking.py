"""Ticks steps off in a project file, and leaves the rest of it as the maker wrote it.

A tick is one line more under `done:` where the list stands as lines, and one word more where it
stands in brackets. Line ends, comments, quotes and the last lines stay. What comes out is read
again before anything is written.
"""

from __future__ import annotations

import re
from collections.abc import Callable, Iterator, Sequence
from pathlib import Path
from typing import Any

from advisor.errors import InputError, Problem, Where
from advisor.textio import yamledit
from advisor.textio.files import update_file
from advisor.textio.flow import quoted
from advisor.textio.yamlfile import Data, parse_yaml

KEY = "done"
_DOCUMENT_END = re.compile(r"^\.\.\.(?=\s|\Z)", re.MULTILINE)


def tick_file(path: Path, tick: Sequence[str], untick: Sequence[str] = ()) -> tuple[str, ...]:
    """Add steps to the `done:` list of a project file, and take others out of it.

    What the file says when it is written counts, so that two runs at once both keep their ticks.

    Returns:
        what could not be kept of the file, to be told; mostly nothing.

    Raises:
        InputError: the file cannot be read or written; then nothing is changed.
    """

    def change(text: str) -> str:
        before = _done(parse_yaml(text, str(path)).data)
        done = [name for name in dict.fromkeys([*before, *tick]) if name not in untick]
        return ticked(text, done, str(path))

    return update_file(path, change)


def ticked(text: str, done: Sequence[str], file: str = "project") -> str:
    """The text of a project with another `done:` list and nothing else changed.

    Raises:
        InputError: the text cannot be read, or the list cannot be written into it.
    """
    wanted = dict(_mapping(parse_yaml(text, file).data))
    if _done(wanted) == list(done):
        return text
    wanted.pop(KEY, None)
    if done:
        wanted[KEY] = list(done)
    for write in _ways(text, list(done)):
        new = write()
        if _reads(new, wanted, file):
            return new
    by_hand = f"write it by hand: {KEY}: [{', '.join(map(quoted, done))}]"
    raise InputError(
        Problem(f"the list of done steps cannot be changed here; {by_hand}", Where(file))
    )


def _reads(text: str, wanted: dict[str, Data], file: str) -> bool:
    try:
        return _mapping(parse_yaml(text, file).data) == wanted
    except InputError:
        return False


def _mapping(data: Data) -> dict[str, Data]:
    return data if isinstance(data, dict) else {}


def _done(data: Data) -> list[str]:
    """The steps that are ticked; what is no list of words is for the schema to refuse."""
    found = _mapping(data).get(KEY)
    return [str(name) for name in found] if isinstance(found, list) else []


def _ways(text: str, done: list[str]) -> Iterator[Callable[[], str]]:
    """The ways to write the list, the most likely first."""
    root = yamledit.tree_of(text)
    pair = yamledit.pair_of(root, KEY)
    if pair is None:
        if root.flow_style:
            yield lambda: _into_group(text, root, done)
        else:
            yield lambda: _as_new_lines(text, done, before_blank=True)
            yield lambda: _as_new_lines(text, done, before_blank=False)
        return
    key, value = pair
    if not done:
        yield lambda: _without_pair(text, root, key, value)
    elif isinstance(value.value, list) and value.flow_style:
        yield lambda: _in_brackets(text, value, done)
    elif isinstance(value.value, list):
        yield lambda: _as_lines(text, value, done)
    elif value.value:
        yield lambda: yamledit.replaced(
            text, yamledit.start(value), yamledit.end(value), _all(done)
        )
    else:
        yield lambda: _first_lines(text, key, done)
        colon = text.find(":", yamledit.end(key)) + 1
        yield lambda: yamledit.replaced(text, colon, colon, f" {_all(done)}")


def _all(done: list[str]) -> str:
    return f"[{', '.join(map(quoted, done))}]"


def _as_new_lines(text: str, done: list[str], *, before_blank: bool) -> str:
    """The key and its list behind all that is written, before an end mark of the document."""
    mark = _DOCUMENT_END.search(text, yamledit.end(yamledit.tree_of(text)))
    head, tail = (text[: mark.start()], text[mark.start() :]) if mark else (text, "")
    lines = yamledit.lines_of(head)
    kept = len(lines)
    while before_blank and kept and not lines[kept - 1].strip():
        kept -= 1
    end = yamledit.line_end(text)
    if kept and not lines[kept - 1].endswith(("\n", "\r")):
        lines[kept - 1] += end
    new = [f"{KEY}:{end}", *(f"  - {quoted(name)}{end}" for name in done)]
    return "".join([*lines[:kept], *new, *lines[kept:], tail])


def _first_lines(text: str, key: Any, done: list[str]) -> str:
    """The first steps below a key that has none yet."""
    lines = yamledit.lines_of(text)
    at = yamledit.line_number(lines, yamledit.start(key))
    end = yamledit.line_end(text)
    if not lines[at].endswith(("\n", "\r")):
        lines[at] += end
    return "".join([*lines[: at + 1], *(f"  - {quoted(n)}{end}" for n in done), *lines[at + 1 :]])


def _as_lines(text: str, value: Any, done: list[str]) -> str:
    """Lines of the list added or taken away."""
    lines = yamledit.lines_of(text)
    end = yamledit.line_end(text)
    gone: set[int] = set()
    names: list[str] = []
    last = yamledit.line_number(lines, yamledit.start(value)) - 1
    for item in value.value:
        first = yamledit.line_number(lines, yamledit.start(item))
        stop = yamledit.line_number(lines, yamledit.end(item) - 1)
        if item.value in done and item.value not in names:
            names.append(item.value)
            last = stop
        else:
            gone.update(range(first, stop + 1))
            last = max(last, stop)
    last = _past_comments(lines, last)
    if not lines[last].endswith(("\n", "\r")):
        lines[last] += end
    dash = " " * value.start_mark.column
    new = [f"{dash}- {quoted(name)}{end}" for name in done if name not in names]
    kept = [line for k, line in enumerate(lines[: last + 1]) if k not in gone]
    rest = [line for k, line in enumerate(lines[last + 1 :], last + 1) if k not in gone]
    return "".join([*kept, *new, *rest])


def _past_comments(lines: list[str], last: int) -> int:
    """The last line of the list with its closing comments; one above a next key is that key's."""
    stop = last + 1
    while stop < len(lines) and lines[stop].lstrip().startswith("#"):
        stop += 1
    return stop - 1 if stop == len(lines) or not lines[stop].strip() else last


def _in_brackets(text: str, value: Any, done: list[str]) -> str:
    """Words of the list added or taken away."""
    items = value.value
    new = [quoted(name) for name in done if name not in [item.value for item in items]]
    if new:
        at = yamledit.end(items[-1]) if items else yamledit.start(value) + 1
        text = yamledit.replaced(text, at, at, (", " if items else "") + ", ".join(new))
    while True:
        items = yamledit.child(yamledit.tree_of(text), KEY).value
        names = [item.value for item in items]
        gone = [k for k, name in enumerate(names) if name not in done or name in names[:k]]
        if not gone:
            return text
        text = _without_word(text, items, gone[-1])


def _without_word(text: str, items: list[Any], k: int) -> str:
    """The text without one of the words in brackets, and without its comma."""
    if k + 1 < len(items):
        begin, stop = yamledit.start(items[k]), yamledit.start(items[k + 1])
    else:
        begin = yamledit.end(items[k - 1]) if k else yamledit.start(items[k])
        stop = yamledit.end(items[k])
    return yamledit.replaced(text, begin, stop, "")


def _into_group(text: str, root: Any, done: list[str]) -> str:
    """The key inside the braces that hold the whole project."""
    at = yamledit.end(root.value[-1][1]) if root.value else yamledit.start(root) + 1
    return yamledit.replaced(text, at, at, f"{', ' if root.value else ''}{KEY}: {_all(done)}")


def _without_pair(text: str, root: Any, key: Any, value: Any) -> str:
    """The text without the key and its list; comments on lines of their own stay."""
    if root.flow_style:
        pairs = [pair[0] for pair in root.value]
        k = pairs.index(key)
        if k + 1 < len(pairs):
            return yamledit.replaced(text, yamledit.start(key), yamledit.start(pairs[k + 1]), "")
        begin = yamledit.end(root.value[k - 1][1]) if k else yamledit.start(key)
        return yamledit.replaced(text, begin, yamledit.end(value), "")
    lines = yamledit.lines_of(text)
    first = yamledit.line_number(lines, yamledit.start(key))
    last = yamledit.line_number(lines, max(yamledit.start(key), yamledit.end(value) - 1))
    inside = [
        line
        for line in lines[first + 1 : last + 1]
        if line.lstrip().startswith("#") or not line.strip()
    ]
    return "".join([*lines[:first], *inside, *lines[last + 1 :]])

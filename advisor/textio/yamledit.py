"""Changes a few letters of a YAML text and leaves the rest of it as the maker wrote it.

The places come from the reader's own marks, so that comments, quotes, spaces and line ends all
stay. What comes out is to be read again before it is kept.
"""

from __future__ import annotations

import re
from typing import Any

_LINE = re.compile(r"[^\r\n]*(?:\r\n|\r|\n)|[^\r\n]+\Z")


def tree_of(text: str) -> Any:
    """The nodes of a YAML text that was found sound; each has `start_mark` and `end_mark`."""
    import yaml  # noqa: PLC0415 - heavy, and most runs change nothing

    return yaml.compose(text, Loader=getattr(yaml, "CLoader", yaml.Loader))


def pair_of(node: Any, name: str) -> tuple[Any, Any] | None:
    """The key and the value of a name in a group of keys."""
    if not isinstance(getattr(node, "value", None), list):
        return None
    pairs = (pair for pair in node.value if isinstance(pair, tuple))
    return next((pair for pair in pairs if getattr(pair[0], "value", None) == name), None)


def child(node: Any, name: str) -> Any:
    """The value of a name in a group of keys; None where there is none."""
    pair = pair_of(node, name)
    return pair[1] if pair else None


def start(node: Any) -> int:
    """Where a node begins, in characters."""
    return int(node.start_mark.index)


def end(node: Any) -> int:
    """Where its last word ends; a block ends there, not where the next thing begins."""
    if isinstance(node.value, list) and not node.flow_style and node.value:
        last = node.value[-1]
        return end(last[1] if isinstance(last, tuple) else last)
    return int(node.end_mark.index)


def replaced(text: str, begin: int, stop: int, new: str) -> str:
    """The text with another piece between two places."""
    return text[:begin] + new + text[stop:]


def lines_of(text: str) -> list[str]:
    """The lines of a text with their ends, whichever they are."""
    return _LINE.findall(text)


def line_number(lines: list[str], index: int) -> int:
    """The number, from 0, of the line that holds a place of the text."""
    before = 0
    for number, line in enumerate(lines):
        before += len(line)
        if index < before:
            return number
    return max(0, len(lines) - 1)


def line_end(text: str) -> str:
    """How a text ends its lines."""
    return "\r\n" if "\r\n" in text else "\n"

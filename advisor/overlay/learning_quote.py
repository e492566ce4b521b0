"""Writes what she charges by: a price, an hour, a garment that she finished."""

from __future__ import annotations

import re
from collections.abc import Callable
from typing import Any

from advisor.errors import InputError
from advisor.textio.flow import flow
from advisor.textio.yamledit import line_end
from advisor.textio.yamlfile import parse_yaml

HEAD = "# Your prices and times, written by `advisor learn`; change them as you like.\n"


def with_line(text: str | None, key: str, value: Any) -> str:
    """Her file with one plain key set, as `hour: 22`; comments and line ends stay."""
    lines, end = _lines(text)
    at = next((i for i, line in enumerate(lines) if line.startswith(f"{key}:")), None)
    if at is None:
        at = next((i for i, line in enumerate(lines) if not line.startswith("#")), len(lines))
        lines.insert(at, "")
    lines[at] = f"{key}: {flow(value)}"
    return end.join((*lines, ""))


def with_entry(text: str | None, group: str, name: str, value: Any) -> str:
    """Her file with an entry of a group set, as `prices: {velvet: 30}` one a line.

    Raises:
        InputError: the group is not written one entry a line.
    """
    return _with(
        text, group, f"  {flow(name)}: {flow(value)}", lambda line: _key(line) == name.casefold()
    )


def with_row(text: str | None, group: str, row: dict[str, Any]) -> str:
    """Her file with one row more at the end of a list.

    Raises:
        InputError: the list is not written one row a line.
    """
    return _with(text, group, f"  - {flow(row)}", lambda _: False)


def _with(text: str | None, group: str, entry: str, same: Callable[[str], bool]) -> str:
    """Her file with a line in a group: in place of the one that is the same, else at its end."""
    lines, end = _lines(text)
    head = _head(lines, group)
    if head is None:
        return end.join((*lines, f"{group}:", entry, ""))
    at = head + 1
    while at < len(lines) and lines[at].startswith((" ", "#")) and not same(lines[at]):
        at += 1
    found = at < len(lines) and lines[at].startswith((" ", "#"))
    lines[at : at + found] = [entry]
    return end.join((*lines, ""))


def _lines(text: str | None) -> tuple[list[str], str]:
    body = HEAD if text is None else text
    return body.replace("\r\n", "\n").splitlines(), line_end(body)


def _head(lines: list[str], group: str) -> int | None:
    at = next((i for i, line in enumerate(lines) if line.startswith(f"{group}:")), None)
    if at is not None and re.fullmatch(rf"{group}:[ ]*(?:#.*)?", lines[at]) is None:
        raise InputError(f"write '{group}' with one entry below another; then one can be added")
    return at


def _key(line: str) -> str:
    data = parse_yaml(line.strip() + "\n", "").data if ":" in line and "#" not in line[:3] else None
    return str(next(iter(data), "")).casefold() if isinstance(data, dict) else ""

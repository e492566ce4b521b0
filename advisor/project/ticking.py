"""Ticks steps off in a project file, and leaves the rest of it as the maker wrote it.

A tick is one line more under `done:`, so it is written as a line wherever the list stands as
lines; only a list in another shape goes through the round trip of the YAML library, which keeps
comments but may set lines anew. Either way the result is read again before anything is written.
"""

from __future__ import annotations

import io
from collections.abc import Sequence
from pathlib import Path

from advisor.errors import InputError
from advisor.textio.files import write_whole
from advisor.textio.yamlfile import Data, parse_yaml
from advisor.textio.yamltext import quoted

KEY = "done"


def tick_file(path: Path, done: Sequence[str]) -> None:
    """Make the `done:` list of a project file hold just these steps.

    Raises:
        InputError: the file cannot be read or written; then nothing is changed.
    """
    try:
        text = path.read_text("utf-8")
    except (OSError, UnicodeDecodeError) as error:
        raise InputError(f"cannot read {path}: {error}") from None
    write_whole(path, ticked(text, done, str(path)), replace=True)


def ticked(text: str, done: Sequence[str], file: str = "project") -> str:
    """The text of a project with another `done:` list and nothing else changed."""
    wanted = dict(_mapping(parse_yaml(text, file).data))
    wanted.pop(KEY, None)
    if done:
        wanted[KEY] = list(done)
    for write in (_by_lines, _round_trip):
        new = write(text, list(done))
        if new is not None and _mapping(parse_yaml(new, file).data) == wanted:
            return new
    raise InputError("the list of done steps cannot be written into this file")


def _mapping(data: Data) -> dict[str, Data]:
    return data if isinstance(data, dict) else {}


def _by_lines(text: str, done: list[str]) -> str | None:
    """Lines of the list added or taken away; None where the list is no list of lines."""
    end = "\r\n" if "\r\n" in text else "\n"
    lines = text.splitlines()
    at = next((i for i, line in enumerate(lines) if _is_key(line)), None)
    if at is None:
        tail = [f"{KEY}:", *(f"  - {quoted(name)}" for name in done)] if done else []
        return end.join([*_without_blank_end(lines), *tail]) + end
    if lines[at].partition("#")[0].strip() != f"{KEY}:":
        return None
    stop = at + 1
    while stop < len(lines) and (not lines[stop].strip() or lines[stop][0] in " -#"):
        stop += 1
    kept, names = _kept(lines[at + 1 : stop], done)
    new = [f"{_indent(lines[at + 1 : stop])}- {quoted(n)}" for n in done if n not in names]
    while kept and not kept[-1].strip():
        new.append(kept.pop())
    block = [lines[at], *kept, *new] if done else [line for line in kept if line.strip()]
    return end.join([*lines[:at], *block, *lines[stop:]]) + end


def _kept(block: list[str], done: list[str]) -> tuple[list[str], set[str]]:
    """The lines of the list that stay, comments among them, and the names on them."""
    kept, names = [], set()
    for line in block:
        bare = line.strip()
        if bare.startswith("- "):
            name = _read(bare[2:])
            if name not in done or name in names:
                continue
            names.add(name)
        kept.append(line)
    return kept, names


def _is_key(line: str) -> bool:
    return line.startswith(f"{KEY}:")


def _read(item: str) -> str:
    parsed = parse_yaml(f"x: {item}\n", KEY).data
    return str(_mapping(parsed).get("x", ""))


def _indent(block: list[str]) -> str:
    first = next((line for line in block if line.strip().startswith("- ")), "  - ")
    return first[: len(first) - len(first.lstrip())]


def _without_blank_end(lines: list[str]) -> list[str]:
    while lines and not lines[-1].strip():
        lines = lines[:-1]
    return lines


def _round_trip(text: str, done: list[str]) -> str:
    from ruamel.yaml import YAML

    yaml = YAML(typ="rt")
    yaml.preserve_quotes = True
    yaml.width = 100_000
    yaml.indent(mapping=2, sequence=4, offset=2)
    data = yaml.load(text)
    if done:
        data[KEY] = done
    else:
        data.pop(KEY, None)
    out = io.StringIO()
    yaml.dump(data, out)
    return out.getvalue()

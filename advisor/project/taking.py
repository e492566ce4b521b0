"""Writes remedies into a project file: whole or not at all, and nothing else of it is changed."""

from __future__ import annotations

import os
from collections.abc import Iterator, Sequence
from contextlib import contextmanager, suppress
from pathlib import Path

from advisor.errors import InputError
from advisor.project.lines import Line, Steps
from advisor.textio.editing import Edit, edited
from advisor.textio.files import write_whole
from advisor.textio.yamlfile import Data, parse_yaml

_BOM = "\ufeff"


def with_lines(text: str, lines: Sequence[Line], file: str) -> str:
    """The text of a project with some lines written into it; comments and line ends stay.

    Raises:
        InputError: a line has no place in it.
    """
    mark = _BOM if text.startswith(_BOM) else ""
    body = text.removeprefix(_BOM)
    edits = list(_edits(lines, parse_yaml(body.replace("\r\n", "\n"), file).data))
    return mark + edited(body, edits, file)


def _edits(lines: Sequence[Line], data: Data) -> Iterator[Edit]:
    """The lines as edits of this file: seams by their place, a bare phrase as a group of keys."""
    names = [" ".join(str(s.get("name", "")).split()) for s in data["seams"]]
    # Entries of a list are taken away from its end, so that the others keep their places.
    kept = [line for line in lines if not _is_entry_gone(line)]
    gone = [line for line in lines if _is_entry_gone(line)]
    for line in (*kept, *sorted(gone, key=lambda x: [str(s) for s in x.path], reverse=True)):
        way: Steps = line.path
        if way[0] == "seams":
            way = ("seams", names.index(str(way[1])), *way[2:])
        if way[0] == "fabrics":
            known = {" ".join(key.split()).casefold(): key for key in data["fabrics"]}
            key = known.get(str(way[1]).casefold())
            if key is None:
                continue  # a notion that is named in its seam alone
            if isinstance(data["fabrics"][key], str) and len(way) > 2:
                whole = {"fabric": data["fabrics"][key], str(way[2]): line.value}
                yield ("fabrics", key), whole
                continue
            way = ("fabrics", key, *way[2:])
        if way == ("maker", "feet") and "maker" not in data:
            yield ("maker",), {"feet": line.value}
            continue
        yield way, line.value
    yield from _left_over(lines, data, names)


def _left_over(lines: Sequence[Line], data: Data, names: list[str]) -> Iterator[Edit]:
    """Notions among the fabrics that no layer names any more: a garment has what it is made of."""
    changed = {
        (names.index(str(line.path[1])), line.path[3])
        for line in lines
        if line.path[2:3] == ("layers",)
    }
    left: set[str] = set()
    gone: set[str] = set()
    for i, seam in enumerate(data["seams"]):
        for j, layer in enumerate(seam["layers"]):
            name = layer.get("use") if isinstance(layer, dict) else layer
            (gone if (i, j) in changed else left).add(" ".join(str(name or "").split()).casefold())
    for key, about in data["fabrics"].items():
        named = " ".join(key.split()).casefold()
        if named in gone - left and isinstance(about, dict) and "notion" in about:
            yield ("fabrics", key), None


def _is_entry_gone(line: Line) -> bool:
    return line.value is None and isinstance(line.path[-1], int)


def read_text(path: Path) -> str:
    """The text of a project just as it is written, line ends and all.

    Raises:
        InputError: it cannot be read, or is not UTF-8.
    """
    try:
        return path.read_bytes().decode("utf-8")
    except (OSError, UnicodeDecodeError) as error:
        raise InputError(f"cannot read {path}: {error}") from None


def write_project(path: Path, old: str, new: str) -> None:
    """Put the new text in the place of the old; refused where somebody has changed it meanwhile.

    Raises:
        InputError: the file is not as it was read, is being written by another, or cannot be
            written.
    """
    with _held(path):
        if read_text(path) != old:
            raise InputError(f"{path}: the file was changed meanwhile; nothing is written")
        write_whole(path, new, replace=True)


@contextmanager
def _held(path: Path) -> Iterator[None]:
    """Hold a project against another writer of this tool."""
    try:
        target = path.resolve()
        handle = os.open(target, os.O_RDONLY)
    except OSError as error:
        raise InputError(f"cannot read {path}: {error.strerror}") from None
    try:
        with suppress(ImportError):
            import fcntl  # noqa: PLC0415 - not on every system

            try:
                fcntl.flock(handle, fcntl.LOCK_EX | fcntl.LOCK_NB)
            except BlockingIOError:
                raise InputError(f"{path}: another command is writing this file") from None
            except OSError:
                pass  # a file system without locks; the comparison still guards
        yield
    finally:
        os.close(handle)

"""Finds the knowledge, and keeps its compiled form so that a second run need not read YAML.

The cache is JSON: data only. It carries the format, the version and a stamp of every knowledge
file (name, size, time of change); where anything differs it is made again. It is written whole
or not at all, and a cache that cannot be read or written changes nothing but the speed.
"""

from __future__ import annotations

import contextlib
import json
import os
from pathlib import Path
from typing import Any

from advisor import __version__
from advisor.knowledge.model import Knowledge, from_plain
from advisor.knowledge.place import knowledge_folder

CACHE_VARIABLE = "ADVISOR_CACHE"
OWN_VARIABLE = "ADVISOR_OWN"
MOST_BYTES = 50_000_000


def cache_folder() -> Path:
    """Where the compiled knowledge is kept; ADVISOR_CACHE names another place."""
    named = os.environ.get(CACHE_VARIABLE)
    if named:
        return Path(named)
    base = os.environ.get("XDG_CACHE_HOME")
    return Path(base or _home() / ".cache") / "advisor"


def stamp(folder: Path) -> list[list[Any]]:
    """Name, size and time of change of every knowledge file, in a fixed order."""
    rows: list[list[Any]] = []
    pending = [str(folder)]
    while pending:
        here = pending.pop()
        with contextlib.suppress(OSError), os.scandir(here) as entries:
            for entry in entries:
                if entry.is_dir(follow_symlinks=False):
                    if entry.name != "examples":
                        pending.append(entry.path)
                elif entry.name.endswith(".yaml"):
                    about = entry.stat()
                    rows.append([entry.path, about.st_size, about.st_mtime_ns])
    return sorted(rows)


def load_knowledge(folder: Path | None = None) -> Knowledge:
    """The knowledge, from the cache when it is fresh.

    Raises:
        InputError: the knowledge has problems; all of them are named.
    """
    where = folder or knowledge_folder()
    own = own_folder()
    mark: dict[str, Any] = {
        "version": __version__,
        "folder": _placed(where),
        "files": stamp(where),
        "own": _placed(own),
        "own_files": stamp(own),
    }
    path = cache_folder() / f"knowledge-{_name_of(mark['folder'] + mark['own'])}.json"
    raw = _read(path, mark)
    if raw is None:
        raw = compile_folder(where, own if mark["own_files"] else None)
        _write(path, mark, raw)
    return from_plain(raw)


def own_folder() -> Path:
    """A maker's own folder: named by ADVISOR_OWN, or in the folder for settings."""
    named = os.environ.get(OWN_VARIABLE)
    if named:
        return Path(named)
    base = os.environ.get("XDG_CONFIG_HOME")
    return Path(base or _home() / ".config") / "advisor" / "knowledge"


def _home() -> Path:
    """The home folder; for somebody who has none, a place that keeps nothing."""
    try:
        return Path.home()
    except RuntimeError:
        return Path(os.devnull)


def _placed(folder: Path) -> str:
    """The whole path of a folder, or as it was named where the working folder is gone."""
    try:
        return str(folder.absolute())
    except OSError:
        return str(folder)


def compile_folder(folder: Path, own: Path | None = None) -> dict[str, Any]:
    """Read, check and compile a knowledge folder, with a maker's own laid over it.

    Args:
        folder: the shipped knowledge.
        own: hers; what is wrong in it is left out and named, never raised.

    Raises:
        InputError: with every problem found.
    """
    from advisor.errors import InputError
    from advisor.knowledge.compiling import to_plain
    from advisor.knowledge.load import read_book
    from advisor.knowledge.vocabulary import check_book

    book = read_book(folder)
    problems = check_book(book)
    if problems:
        raise InputError(tuple(problems))
    left_out: list[str] = []
    if own is not None:
        from advisor.overlay.own import in_words, overlay

        try:
            left_out = in_words(overlay(book, own))
        except Exception as error:  # noqa: BLE001 - her files never take the tool down
            book = read_book(folder)
            left_out = [f"{own}: all of it, for it cannot be read ({type(error).__name__})"]
    return json.loads(json.dumps({**to_plain(book), "left_out": left_out}))  # type: ignore[no-any-return]


def _name_of(text: str) -> str:
    import zlib

    return f"{zlib.crc32(text.encode('utf-8', 'surrogateescape')):08x}"


def _read(path: Path, mark: dict[str, Any]) -> dict[str, Any] | None:
    try:
        if path.stat().st_size > MOST_BYTES:
            return None
        with path.open(encoding="utf-8") as file:
            kept = json.load(file)
        if kept["mark"] == mark and kept["data"]["format"] == _format():
            return kept["data"]  # type: ignore[no-any-return]
    except (OSError, ValueError, KeyError, TypeError, RecursionError):
        pass
    return None


def _format() -> int:
    from advisor.knowledge.model import FORMAT

    return FORMAT


def _write(path: Path, mark: dict[str, Any], raw: dict[str, Any]) -> None:
    """Best effort: whatever goes wrong, the answer does not depend on it."""
    import tempfile  # only where the cache is not fresh

    temporary = ""
    try:
        path.parent.mkdir(parents=True, exist_ok=True)
        handle, temporary = tempfile.mkstemp(dir=path.parent, prefix=".knowledge-")
        with os.fdopen(handle, "w", encoding="utf-8") as file:
            json.dump({"mark": mark, "data": raw}, file, ensure_ascii=False)
        Path(temporary).replace(path)
    except (OSError, ValueError):
        with contextlib.suppress(OSError):
            if temporary:
                Path(temporary).unlink()

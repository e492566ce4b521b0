"""Finds the knowledge, and keeps its compiled form so that a second run need not read YAML.

The cache is data only. It is marked with the version and a stamp of every knowledge file; where
anything differs it is made again, and a cache that cannot be read, believed or written changes
nothing but the speed. A wheel carries its knowledge compiled, marked with what its files hold.
"""

from __future__ import annotations

import contextlib
import json
import os
from collections.abc import Callable, Iterator, Mapping
from pathlib import Path
from typing import Any

from advisor import __version__
from advisor.knowledge.model import FORMAT, Knowledge, from_plain
from advisor.knowledge.place import knowledge_folder
from advisor.overlay.kept import (
    MOST_BYTES,
    data_of,
    mark_of,
    read_cache,
    sum_of,
    sweep,
    whole_text,
    write_cache,
)
from advisor.overlay.places import (
    CACHE_VARIABLE,
    OWN_VARIABLE,
    cache_folder,
    own_folder,
    placed,
)
from advisor.project import phrases

__all__ = [
    "CACHE_VARIABLE",
    "OWN_VARIABLE",
    "cache_folder",
    "compile_folder",
    "load_knowledge",
    "own_folder",
    "shipped_text",
    "stamp",
]

SHIPPED = "_compiled.json"
"""The compiled knowledge that a wheel carries, beside the package's own modules."""
MOST_KEPT = 12
"""Caches that stay when a new one is written: one for each pair of folders in use."""
LONG = 0.5
"""Seconds after which a maker is told that something takes time."""
_UNFIT = (KeyError, TypeError, ValueError, AttributeError, IndexError, RecursionError)


def stamp(folder: Path, ending: str = ".yaml") -> list[list[Any]]:
    """What tells that a file of a folder changed, in a fixed order.

    A row holds name, size, times of change and of any change to the file, and its number on the
    disk: an edit that keeps size and time is noticed by the last two.
    """
    rows = []
    for entry in _entries(folder, ending):
        with contextlib.suppress(OSError):
            about = entry.stat()
            times = [about.st_mtime_ns, about.st_ctime_ns]
            rows.append([entry.path, about.st_size, *times, about.st_ino])
    return sorted(rows)


def _entries(folder: Path, ending: str = ".yaml") -> Iterator[os.DirEntry[str]]:
    """Every such file below a folder; the examples are not knowledge."""
    pending = [str(folder)]
    while pending:
        with contextlib.suppress(OSError), os.scandir(pending.pop()) as entries:
            for entry in entries:
                if entry.is_dir(follow_symlinks=False):
                    if entry.name != "examples":
                        pending.append(entry.path)
                elif entry.name.endswith(ending):
                    yield entry


def load_knowledge(folder: Path | None = None, slow: Callable[[], None] | None = None) -> Knowledge:
    """The knowledge, from the cache when it is fresh.

    Args:
        folder: the shipped knowledge, where it is not the one of this installation.
        slow: called once where it takes longer than half a second.

    Raises:
        InputError: the knowledge has problems; all of them are named.
    """
    where = folder or knowledge_folder()
    own = own_folder()
    hers = stamp(own)
    here = [placed(where), placed(own)]
    mark = mark_of(
        {
            "version": __version__,
            "format": FORMAT,
            "folders": here,
            "files": stamp(where),
            "own_files": hers,
            "spelling": stamp(Path(phrases.__file__).parent, ".py"),
        }
    )
    path = cache_folder() / f"knowledge-{sum_of(repr(here).encode())[:12]}.json"
    found = _built(data_of(read_cache(path), mark))
    if found is not None:
        return found
    raw = None if hers else _shipped(where)
    found = _built(raw)
    if raw is None or found is None:
        with _told(slow):
            raw = compile_folder(where, own if hers else None)
        found = from_plain(raw)
    if write_cache(path, whole_text(mark, raw)):
        sweep(path.parent, "knowledge-*.json", MOST_KEPT)
    return found


def _built(raw: dict[str, Any] | None) -> Knowledge | None:
    """The knowledge of compiled data; None where it is none that this version can read."""
    with contextlib.suppress(*_UNFIT):
        if raw is not None and raw["format"] == FORMAT:
            return from_plain(raw)
    return None


@contextlib.contextmanager
def _told(slow: Callable[[], None] | None) -> Iterator[None]:
    """Call `slow` where the work inside takes long."""
    if slow is None:
        yield
        return
    import threading

    timer = threading.Timer(LONG, slow)
    timer.daemon = True
    timer.start()
    try:
        yield
    finally:
        timer.cancel()


def _shipped(where: Path) -> dict[str, Any] | None:
    """What a wheel carries compiled, while the files that it was made from are as they were."""
    path = Path(__file__).resolve().parent.parent / SHIPPED
    try:
        if path.stat().st_size > MOST_BYTES:
            return None
        return data_of(path.read_bytes(), _content_mark(where))
    except OSError:
        return None


def shipped_text(folder: Path) -> bytes:
    """The compiled form of a knowledge folder for a wheel to carry.

    Raises:
        InputError: the knowledge has problems.
    """
    return whole_text(_content_mark(folder), compile_folder(folder))


def _content_mark(folder: Path) -> str:
    """A mark of what the knowledge files of a folder hold, wherever the folder lies."""
    rows = []
    for entry in _entries(folder):
        path = Path(entry.path)
        rows.append([path.relative_to(folder).as_posix(), sum_of(path.read_bytes())])
    return mark_of({"version": __version__, "format": FORMAT, "files": sorted(rows)})


def compile_folder(
    folder: Path, own: Path | None = None, changes: Mapping[Path, str] | None = None
) -> dict[str, Any]:
    """Read, check and compile a knowledge folder, with a maker's own laid over it.

    Args:
        folder: the shipped knowledge.
        own: hers; what is wrong in it is left out and named, never raised.
        changes: texts that count instead of files of hers, to be tried before they are written.

    Raises:
        InputError: with every problem found.
    """
    from advisor.errors import InputError
    from advisor.knowledge.compiling import to_plain
    from advisor.knowledge.load import read_book
    from advisor.knowledge.sentences import check_sentences
    from advisor.knowledge.vocabulary import check_book
    from advisor.project.phrases.grounds import TABLE, table_of

    book = read_book(folder)
    problems = [*check_book(book), *check_sentences(book)]
    if problems:
        raise InputError(tuple(problems))
    left_out: list[str] = []
    mine: dict[str, Any] = {}
    if own is not None:
        from advisor.overlay.own import in_words, overlay
        from advisor.overlay.own_room import read_room
        from advisor.records import as_mapping

        try:
            problems = overlay(book, own, changes)
            room, wrong = read_room(own, _thread_fibres(book), changes)
            mine, left_out = as_mapping(room), in_words([*problems, *wrong])
        except Exception as error:  # noqa: BLE001 - her files never take the tool down
            book, mine = read_book(folder), {}
            left_out = [f"{own}: all of it, for it cannot be read ({type(error).__name__})"]
    whole = json.loads(json.dumps({**to_plain(book), "mine": mine, "left_out": left_out}))
    return {**whole, TABLE: table_of(from_plain(whole))}


def _thread_fibres(book: Any) -> tuple[str, ...]:
    """The words for what sewing thread is made of."""
    aspect = book.aspects.get("thread.fibre")
    return tuple(aspect.form.options) if aspect else ()

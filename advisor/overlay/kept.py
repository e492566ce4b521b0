"""What took long to work out, as a file: one line of what it was made from, then the data as JSON.

It is believed only where its checksum fits its whole content, and a cache only where it is an
ordinary file of the user's own that nobody else may write to. Anything else counts as not there.
"""

from __future__ import annotations

import contextlib
import json
import math
import os
import stat
import time
from fnmatch import fnmatch
from pathlib import Path
from typing import Any

MOST_BYTES = 50_000_000
_LEFTOVER_AFTER = 3600.0
_BEGINS = ".knowledge-"


def sum_of(raw: bytes) -> str:
    """The checksum of some bytes."""
    import hashlib

    return hashlib.blake2b(raw, digest_size=20).hexdigest()


def mark_of(what: dict[str, Any]) -> str:
    """A short mark for everything that some data depend on."""
    return sum_of(json.dumps(what, sort_keys=True).encode("utf-8", "surrogateescape"))


def whole_text(mark: str, data: dict[str, Any]) -> bytes:
    """The file for some data."""
    body = json.dumps(data, ensure_ascii=False).encode("utf-8", "surrogatepass")
    head = json.dumps({"mark": mark, "sum": sum_of(body)})
    return head.encode("ascii") + b"\n" + body


def data_of(raw: bytes, mark: str) -> dict[str, Any] | None:
    """The data of such a file; None where anything about it is not as it was written."""
    head, _, body = raw.partition(b"\n")
    try:
        found = json.loads(head)
        if found["mark"] != mark or found["sum"] != sum_of(body):
            return None
        data = _read(body)
    except (ValueError, KeyError, TypeError, RecursionError):
        return None
    return data if isinstance(data, dict) else None


def _read(body: bytes) -> Any:
    """JSON; only the slower reader takes a file name that is not UTF-8, and what is no number."""
    import msgspec

    try:
        return msgspec.json.decode(body)
    except ValueError:
        return json.loads(body)


def read_cache(path: Path) -> bytes:
    """The bytes of a cache that may be believed; empty where there is none.

    Nothing that stands in its place is waited for: no pipe, no device, and no link is followed.
    """
    try:
        handle = os.open(path, os.O_RDONLY | _flags("O_NOFOLLOW", "O_NONBLOCK", "O_BINARY"))
    except (OSError, ValueError):
        return b""
    with contextlib.suppress(OSError), os.fdopen(handle, "rb") as file:
        if _is_hers(os.fstat(file.fileno())):
            return file.read(MOST_BYTES + 1)[:MOST_BYTES]
    return b""


def _is_hers(about: os.stat_result) -> bool:
    """Whether this is an ordinary file of the user's that nobody else may write to."""
    if not stat.S_ISREG(about.st_mode) or about.st_size > MOST_BYTES:
        return False
    if not hasattr(os, "geteuid"):
        return True
    return about.st_uid == os.geteuid() and not about.st_mode & (stat.S_IWGRP | stat.S_IWOTH)


def _flags(*names: str) -> int:
    found = 0
    for name in names:
        found |= getattr(os, name, 0)
    return found


def write_cache(path: Path, raw: bytes) -> bool:
    """Best effort: whatever goes wrong, the answer does not depend on it.

    Returns:
        whether it stands there now.
    """
    import tempfile  # only where the cache is not fresh

    temporary = ""
    try:
        path.parent.mkdir(mode=0o700, parents=True, exist_ok=True)
        handle, temporary = tempfile.mkstemp(dir=path.parent, prefix=_BEGINS)
        with os.fdopen(handle, "wb") as file:
            file.write(raw)
        Path(temporary).replace(path)
    except (OSError, ValueError):
        with contextlib.suppress(OSError):
            if temporary:
                Path(temporary).unlink()
        return False
    return True


def sweep(folder: Path, named: str, most: int, room: int = 0) -> None:
    """Take away what was left when a run was killed, and the oldest caches of some name.

    Args:
        folder: where they lie.
        named: a pattern for their names.
        most: how many stay.
        room: how many more there may be before any goes.
    """
    found, leftovers = [], []
    with contextlib.suppress(OSError), os.scandir(folder) as entries:
        for entry in entries:
            if entry.name.startswith(_BEGINS):
                leftovers.append(entry)
            elif fnmatch(entry.name, named):
                found.append(entry)
    old = time.time() - _LEFTOVER_AFTER
    _unlink([e for e in leftovers if _changed(e) < old])
    if len(found) > most + room:
        _unlink(sorted(found, key=_changed, reverse=True)[most:])


def _changed(entry: os.DirEntry[str]) -> float:
    """When an ordinary file changed; what is none is never old."""
    with contextlib.suppress(OSError):
        if entry.is_file(follow_symlinks=False):
            return entry.stat(follow_symlinks=False).st_mtime
    return math.inf


def _unlink(entries: list[os.DirEntry[str]]) -> None:
    for entry in entries:
        with contextlib.suppress(OSError):
            if entry.is_file(follow_symlinks=False):
                Path(entry.path).unlink()

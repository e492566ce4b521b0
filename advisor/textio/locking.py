"""One writer at a time: a lock for each file or folder, kept out of the maker's own folders.

The locks of one user lie in a folder of hers among the temporary files, one empty file for each
place that was ever written. A lock goes with the process that holds it, however that ends.
"""

from __future__ import annotations

import contextlib
import os
import stat
import tempfile
from collections.abc import Iterator
from pathlib import Path

from advisor.errors import InputError, Problem, Where

WAIT = 60.0
"""Seconds after which a writer gives up waiting for another."""


@contextlib.contextmanager
def locked(path: Path, wait: float | None = None) -> Iterator[None]:
    """Hold the lock of a file or folder; whoever else asks for it waits.

    Where no lock can be made (no folder for temporary files), the work goes on without: a writer
    still looks whether the file is as it was read before it is replaced.

    Raises:
        InputError: another writer holds it for longer than `wait` seconds.
    """
    place = _place(path)
    if place is None:
        yield
        return
    from filelock import FileLock, Timeout

    lock = FileLock(str(place), timeout=WAIT if wait is None else wait)
    try:
        lock.acquire()
    except Timeout:
        busy = "another run is writing this; nothing was written. Try again"
        raise InputError(Problem(busy, Where(str(path)))) from None
    except (OSError, NotImplementedError):
        yield
        return
    try:
        yield
    finally:
        lock.release()


def _place(path: Path) -> Path | None:
    """The file that stands for a place; None where the locks have no safe folder."""
    import hashlib

    user = os.geteuid() if hasattr(os, "geteuid") else os.environ.get("USERNAME", "user")
    folder = Path(tempfile.gettempdir()) / f"advisor-locks-{user}"
    try:
        folder.mkdir(mode=0o700, exist_ok=True)
        about = folder.lstat()
    except OSError:
        return None
    others = stat.S_IWGRP | stat.S_IWOTH
    if not stat.S_ISDIR(about.st_mode):
        return None
    if hasattr(os, "geteuid") and (about.st_uid != os.geteuid() or about.st_mode & others):
        return None
    try:
        name = os.fsencode(os.path.realpath(path))
    except (OSError, ValueError):  # no usable name; the writer will say so
        return None
    return folder / f"{hashlib.blake2b(name, digest_size=16).hexdigest()}.lock"

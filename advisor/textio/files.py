"""Writes a whole file or nothing: a sheet half written is worse than none.

The text goes to a new file in the same folder, is forced to the disk, and only then takes the
name asked for. A link is followed, so that the file it points at changes and the link stays.
"""

from __future__ import annotations

import errno
import os
import stat
from collections.abc import Mapping
from pathlib import Path
from typing import NoReturn

from advisor.errors import InputError, Problem, Where

_REASONS: Mapping[int, str] = {
    errno.ENOENT: "no such folder",
    errno.ENOTDIR: "a part of this path is a file, not a folder",
    errno.EACCES: "this place may not be written to",
    errno.EPERM: "this place may not be written to",
    errno.EROFS: "this place may not be written to",
    errno.EISDIR: "this is a folder, not a file",
    errno.ENOSPC: "the disk is full",
    errno.EDQUOT: "the disk is full",
    errno.ENAMETOOLONG: "this name is too long",
    errno.ELOOP: "this link points at itself",
}
# Some file systems have no hard links, and say so in several ways.
_NO_LINKS = frozenset({errno.EPERM, errno.ENOTSUP, errno.ENOSYS, errno.EMLINK, errno.EXDEV})


def write_whole(path: Path, text: str, *, replace: bool) -> None:
    """Write `text` as UTF-8 to `path`, all of it or none of it.

    Args:
        path: the file to write; its folder must be there.
        text: what it shall hold, line ends as they are.
        replace: whether a file of that name may be overwritten.

    Raises:
        InputError: the file is there already and `replace` is false, or the place
            cannot be written to; nothing is left behind.
    """
    try:
        raw = text.encode("utf-8")
        _write(Path(path), raw, replace=replace)
    except UnicodeEncodeError:
        _refuse(path, "the text holds a character that UTF-8 cannot write")
    except FileExistsError:
        _refuse(path, "there is a file of this name already; it is not overwritten unless asked")
    except OSError as error:
        reason = _REASONS.get(error.errno or 0) or error.strerror or "unknown reason"
        _refuse(path, f"cannot write this file: {reason}")
    except (RuntimeError, ValueError):  # a ring of links; a name with a NUL in it
        _refuse(path, "cannot write this file: this is not a usable file name")


def _write(path: Path, raw: bytes, *, replace: bool) -> None:
    if not replace and os.path.lexists(path):
        if path.is_dir():
            raise IsADirectoryError(errno.EISDIR, "")
        raise FileExistsError
    target = path.resolve()
    mode = _mode_to_keep(target)
    temporary = target.with_name(f".{os.urandom(8).hex()}.part")
    try:
        _write_new(temporary, raw, mode)
        if replace:
            temporary.replace(target)
        else:
            _claim(target, temporary, raw)
    finally:
        temporary.unlink(missing_ok=True)
    _settle(target.parent)


def _mode_to_keep(target: Path) -> int | None:
    """Return the permissions of the file to be overwritten, None when there is none."""
    try:
        found = target.stat()
    except FileNotFoundError:
        return None
    if stat.S_ISDIR(found.st_mode):
        raise IsADirectoryError(errno.EISDIR, "")
    if not stat.S_ISREG(found.st_mode):  # a device must never be swapped for a file
        raise OSError(errno.EINVAL, "this is not an ordinary file")
    if not os.access(target, os.W_OK):  # the folder would allow it; the owner said no
        raise PermissionError(errno.EACCES, "")
    return stat.S_IMODE(found.st_mode)


def _write_new(path: Path, raw: bytes, mode: int | None) -> None:
    # "x" fails on a name that exists, and the user's own umask sets the permissions.
    with path.open("xb") as stream:
        stream.write(raw)
        stream.flush()
        os.fsync(stream.fileno())
    if mode is not None:
        path.chmod(mode)


def _claim(target: Path, temporary: Path, raw: bytes) -> None:
    """Give the finished file its name, unless somebody took that name in the meantime."""
    try:
        target.hardlink_to(temporary)
    except OSError as error:
        if isinstance(error, FileExistsError) or error.errno not in _NO_LINKS:
            raise
        _write_in_place(target, raw)


def _write_in_place(target: Path, raw: bytes) -> None:
    stream = target.open("xb")
    try:
        with stream:
            stream.write(raw)
            stream.flush()
            os.fsync(stream.fileno())
    except BaseException:
        target.unlink(missing_ok=True)
        raise


def _settle(folder: Path) -> None:
    # The new name lasts through a power cut only once the folder is on the disk as well.
    if not hasattr(os, "O_DIRECTORY"):
        return
    try:
        handle = os.open(folder, os.O_RDONLY | os.O_DIRECTORY)
    except OSError:
        return  # a folder that may be written but not read; the file itself is safe
    try:
        os.fsync(handle)
    except OSError:
        return
    finally:
        os.close(handle)


def _refuse(path: Path, message: str) -> NoReturn:
    raise InputError(Problem(message, Where(str(path)))) from None

"""Writes a whole file or nothing: a sheet half written is worse than none.

The text goes to a new file in the same folder, is forced to the disk, and only then takes the
name asked for, so that whoever is killed at any moment leaves the old file or the new one. A link
that the maker names is followed, so that the file it points at changes and the link stays;
permissions and owner stay too. What she did not name (`only`) is never reached through a link.
One writer works at a time, and what a killed one left behind is swept by the next.
"""

from __future__ import annotations

import contextlib
import errno
import hashlib
import os
import stat
from collections.abc import Callable, Iterator, Mapping
from pathlib import Path
from typing import NoReturn

from advisor.errors import InputError, Problem, Where
from advisor.textio.locking import locked

_REASONS: Mapping[int, str] = {
    errno.ENOENT: "no such folder",
    errno.ENOTDIR: "a part of this path is a file, not a folder",
    errno.EACCES: "this place may not be written to",
    errno.EPERM: "this place may not be written to",
    errno.EROFS: "this place may not be written to",
    errno.EISDIR: "this is a folder, not a file",
    errno.ENOSPC: "the disk is full",
    errno.EDQUOT: "the disk is full",
    errno.EFBIG: "this file would be too large for this disk",
    errno.ENAMETOOLONG: "this name is too long",
    errno.ELOOP: "this link points at itself",
}
# Some file systems have no hard links, and say so in several ways.
_NO_LINKS = frozenset({errno.EPERM, errno.ENOTSUP, errno.ENOSYS, errno.EMLINK, errno.EXDEV})
_BOM = "\ufeff"
_TRIES = 20
_SECOND_NAME = (
    "this file had a second name (a hard link); under that other name stands what was here before"
)
_OWNER = "this file now belongs to you; it belonged to somebody else before"


def write_whole(path: Path, text: str, *, replace: bool, only: str = "") -> tuple[str, ...]:
    """Write `text` as UTF-8 to `path`, all of it or none of it.

    Args:
        path: the file to write; its folder must be there.
        text: what it shall hold, line ends as they are.
        replace: whether a file of that name may be overwritten.
        only: what a file begins with that may be; for a name that nobody typed.

    Returns:
        what could not be kept of the file that was there, to be told; mostly nothing.

    Raises:
        InputError: the file is there already and `replace` is false, or the place
            cannot be written to; nothing is left behind.
    """
    with _refusing(path), locked(Path(path)):
        return _write(Path(path), text.encode("utf-8"), replace=replace, only=only)


def write_bytes(path: Path, raw: bytes, *, replace: bool) -> tuple[str, ...]:
    """The same for what is no text, such as a printed file.

    Raises:
        InputError: the file is there already and `replace` is false, or the place
            cannot be written to; nothing is left behind.
    """
    with _refusing(path), locked(Path(path)):
        return _write(Path(path), raw, replace=replace)


def update_file(path: Path, change: Callable[[str], str]) -> tuple[str, ...]:
    """Change a text file: read, change and write it as one thing that no other run comes between.

    Args:
        path: a UTF-8 text of at most 1 MB.
        change: given the text without a byte order mark, line ends as they are, returns the
            new one. It may raise InputError; then nothing is written. It may be called again
            where an editor wrote the file meanwhile.

    Returns:
        what could not be kept of the file, to be told; mostly nothing.

    Raises:
        InputError: the file cannot be read or written, or another run does not let go of it.
    """
    from advisor.textio.yamlfile import read_text

    path = Path(path)
    notes: tuple[str, ...] | None = None
    with locked(path):
        tries = iter(range(_TRIES))
        while notes is None and next(tries, None) is not None:
            before = _state(path)
            text = read_text(path)
            new = change(text)
            with _refusing(path):
                bom = _BOM if _starts_with_bom(path) else ""
                if new == text:
                    notes = ()
                elif before == _state(path):
                    notes = _write(path, (bom + new).encode("utf-8"), replace=True)
    if notes is None:
        _refuse(path, "something else keeps writing this file; nothing was changed")
    return notes


def _state(path: Path) -> tuple[int, ...]:
    """What tells that a file is no longer the one that was read."""
    try:
        about = path.stat()
    except OSError:
        return ()
    return (about.st_ino, about.st_size, about.st_mtime_ns, about.st_ctime_ns)


def _starts_with_bom(path: Path) -> bool:
    with path.open("rb") as file:
        return file.read(3) == _BOM.encode()


@contextlib.contextmanager
def _refusing(path: Path) -> Iterator[None]:
    """Whatever keeps a file from being written, as one sentence."""
    try:
        yield
    except UnicodeEncodeError:
        _refuse(path, "the text holds a character that UTF-8 cannot write")
    except FileExistsError:
        _refuse(path, "there is a file of this name already; it is not overwritten unless asked")
    except OSError as error:
        reason = _REASONS.get(error.errno or 0) or error.strerror or "unknown reason"
        _refuse(path, f"cannot write this file: {reason}")
    except (RuntimeError, ValueError):  # a ring of links; a name with a NUL in it
        _refuse(path, "cannot write this file: this is not a usable file name")


def may_replace(path: Path, beginning: str) -> bool:
    """Whether nothing has that name, or an ordinary file that begins so; a link never may."""
    try:
        if not stat.S_ISREG(path.lstat().st_mode):
            return False
        with path.open("rb") as file:
            return file.read(len(beginning.encode())) == beginning.encode()
    except FileNotFoundError:
        return True
    except (OSError, ValueError):
        return False


def _write(path: Path, raw: bytes, *, replace: bool, only: str = "") -> tuple[str, ...]:
    if (not replace and os.path.lexists(path)) or (only and not may_replace(path, only)):
        if path.is_dir():
            raise IsADirectoryError(errno.EISDIR, "")
        raise FileExistsError
    target = path.parent.resolve() / path.name if only else path.resolve()
    old = _about(target)
    beginning = f".advisor-{hashlib.blake2b(os.fsencode(target.name), digest_size=6).hexdigest()}-"
    _sweep(target.parent, beginning)
    temporary = target.with_name(f"{beginning}{os.urandom(6).hex()}.part")
    try:
        _write_new(temporary, raw)
        notes = _like(temporary, old) if old else ()
        if replace:
            temporary.replace(target)
        else:
            _claim(target, temporary)
    finally:
        temporary.unlink(missing_ok=True)
    _settle(target.parent)
    return notes


def _sweep(folder: Path, beginning: str) -> None:
    """Take away what killed writers of this file left; its lock is held, so none is at work."""
    with contextlib.suppress(OSError):
        for left in folder.glob(f"{beginning}*.part"):
            left.unlink()


def _about(target: Path) -> os.stat_result | None:
    """What is known of the file to be overwritten, None when there is none."""
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
    return found


def _write_new(path: Path, raw: bytes) -> None:
    # "x" fails on a name that exists, and the user's own umask sets the permissions.
    with path.open("xb") as stream:
        stream.write(raw)
        stream.flush()
        os.fsync(stream.fileno())


def _like(path: Path, old: os.stat_result) -> tuple[str, ...]:
    """Give a new file the owner and permissions of the old one; returns what cannot be kept."""
    notes = [_SECOND_NAME] if old.st_nlink > 1 else []
    new = path.stat()
    if hasattr(os, "chown") and (new.st_uid, new.st_gid) != (old.st_uid, old.st_gid):
        try:
            os.chown(path, old.st_uid, old.st_gid)
        except OSError:
            with contextlib.suppress(OSError):
                os.chown(path, -1, old.st_gid)
            if new.st_uid != old.st_uid:
                notes.append(_OWNER)
    path.chmod(stat.S_IMODE(old.st_mode))
    return tuple(notes)


def _claim(target: Path, temporary: Path) -> None:
    """Give the finished file its name, unless somebody took that name in the meantime."""
    try:
        target.hardlink_to(temporary)
    except OSError as error:
        if isinstance(error, FileExistsError) or error.errno not in _NO_LINKS:
            raise
        # No other run of ours is at work here, so looking once more is as good as it gets.
        if os.path.lexists(target):
            raise FileExistsError from None
        temporary.replace(target)


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

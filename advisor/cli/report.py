"""What is kept of a fault of ours, so that it can be reported: a file that is named in the message.

It holds what was typed, the versions, and where in the program it happened. It holds nothing of
the maker's project but the names that she typed.
"""

from __future__ import annotations

import contextlib
import os
import platform
import sys
import time
import traceback
from importlib import metadata
from pathlib import Path

from advisor import __version__
from advisor.errors import for_shell, visible
from advisor.overlay.places import cache_folder

MOST_KEPT = 20
_LIBRARIES = ("numpy", "pydantic", "PyYAML", "rich", "typer", "filelock")


def write_report(error: BaseException, words: list[str]) -> Path | None:
    """Write what happened into a new file, and return it; None where none can be written."""
    text = visible(_text(error, words))
    name = f"report-{time.strftime('%Y%m%d-%H%M%S')}-{os.getpid()}.txt"
    folder = cache_folder() / "reports"
    try:
        folder.mkdir(mode=0o700, parents=True, exist_ok=True)
        path = folder / name
        with path.open("x", encoding="utf-8", errors="backslashreplace") as file:
            file.write(text)
    except (OSError, ValueError):
        return None
    _sweep(folder)
    return path


def _text(error: BaseException, words: list[str]) -> str:
    versions = [f"advisor {__version__}", f"Python {platform.python_version()}"]
    versions += [f"{name} {_version(name)}" for name in _LIBRARIES]
    lines = [
        "A fault of the advisor's. Look through this file before you pass it on.",
        "",
        f"typed: advisor {' '.join(map(for_shell, words))}",
        f"on: {platform.platform()}, {', '.join(versions)}",
        "",
        *traceback.format_exception(error),
    ]
    return "\n".join(lines)


def _version(name: str) -> str:
    try:
        return metadata.version(name)
    except metadata.PackageNotFoundError:
        return "none"


def _sweep(folder: Path) -> None:
    with contextlib.suppress(OSError):
        for path in sorted(folder.glob("report-*.txt"))[:-MOST_KEPT]:
            path.unlink()


def tell_fault(error: Exception) -> str:
    """The message for a maker, and the report that it names."""
    path = write_report(error, sys.argv[1:])
    what = f"Something went wrong inside the advisor ({type(error).__name__}: {error})."
    if path is None:
        where = "Set ADVISOR_DEBUG=1 and run it again to see where."
    else:
        where = f"What is needed to mend it stands in {path}"
    return f"{what} That is our fault. {where}"

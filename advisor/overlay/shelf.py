"""Answers that took long to work out, kept on the disk: a file each, for the next command.

A file is marked with its whole question, with the code that worked it out and with the library
under it; it is believed like any cache (`overlay/kept.py`). Where none can be read or written
nothing changes but the speed.
"""

from __future__ import annotations

import contextlib
from collections.abc import Mapping
from functools import cached_property
from pathlib import Path
from typing import Any

from advisor import __version__
from advisor.overlay.kept import (
    data_of,
    mark_of,
    read_cache,
    sum_of,
    sweep,
    whole_text,
    write_cache,
)
from advisor.overlay.places import cache_folder

MOST = 2000
"""Answers that stay when new ones are written, about a block of the disk each."""
ROOM = MOST // 10
"""How many more there may be before the oldest go, so that they are seldom counted in vain."""
_NAMED = "heat-*.json"


class AnswerShelf:
    """Answers in a folder, each in a file of its own that is named after its mark."""

    def __init__(self, folder: Path, workings: Path, library: str) -> None:
        self.folder, self._workings, self._library = folder, workings, library

    @cached_property
    def made_by(self) -> str | None:
        """What tells one way of working answers out from another; None where nothing does."""
        try:
            rows = [[p.name, sum_of(p.read_bytes())] for p in sorted(self._workings.glob("*.py"))]
            return mark_of({"version": __version__, "code": rows, "library": _kind(self._library)})
        except (OSError, ValueError, ImportError):
            return None

    def fetch(self, asked: str) -> dict[str, Any] | None:
        """The answer to a question, or None."""
        if self.made_by is None:
            return None
        mark = self._mark(asked)
        return data_of(read_cache(self._path(mark)), mark)

    def keep(self, found: Mapping[str, dict[str, Any]]) -> None:
        """Write some answers, each by its question, and take the oldest away where there are many.

        The first that cannot be written ends it: then the next cannot be either.
        """
        if self.made_by is None:
            return
        for asked, data in found.items():
            mark = self._mark(asked)
            if not write_cache(self._path(mark), whole_text(mark, data)):
                return
        with contextlib.suppress(OSError):
            sweep(self.folder, _NAMED, MOST, ROOM)

    def _mark(self, asked: str) -> str:
        return mark_of({"asked": asked, "by": self.made_by})

    def _path(self, mark: str) -> Path:
        return self.folder / f"heat-{mark}.json"


def _kind(library: str) -> list[Any]:
    """Which library is installed, without loading it: its place, size and time of change."""
    from importlib.util import find_spec

    found = find_spec(library)
    if found is None or found.origin is None:
        raise ImportError(library)
    about = Path(found.origin).stat()
    return [found.origin, about.st_size, about.st_mtime_ns]


def heat_shelf() -> AnswerShelf:
    """The shelf for what the heat model says."""
    model = Path(__file__).resolve().parents[1] / "heat" / "model"
    return AnswerShelf(cache_folder() / "heat", model, "numpy")

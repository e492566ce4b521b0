"""The maker's folder of projects: what lies in it, and never anything beside it."""

from __future__ import annotations

import os
import re
from pathlib import Path

from advisor.errors import InputError, Problem
from advisor.textio.files import update_file, write_whole
from advisor.textio.yamlfile import read_text
from advisor.writing.meanwhile import refuse_changed

ENDINGS = (".yaml", ".yml")
MOST_LISTED = 500
LONGEST = 100
_NAME = re.compile(r"[^\W_][\w .()'+-]*", re.UNICODE)


class NoProjectError(InputError):
    """There is no project of that name in the folder."""


class Folder:
    """One folder; a project is a file in it, called by its name alone."""

    def __init__(self, place: Path) -> None:
        """Keep to a folder.

        Raises:
            InputError: it is none.
        """
        if not place.is_dir():
            raise InputError(f"{place}: no such folder")
        self.place = place.resolve()

    def names(self) -> list[str]:
        """The projects, by name; links that lead out are none of them."""
        with os.scandir(self.place) as entries:
            found = [e.name for e in entries if e.name.endswith(ENDINGS) and e.name[0] != "."]
        return sorted((n for n in found if self._inside(n)), key=str.casefold)[:MOST_LISTED]

    def path(self, name: str) -> Path:
        """Where a project lies.

        Raises:
            NoProjectError: the folder has no such project.
        """
        plain = name.endswith(ENDINGS) and not name.startswith(".") and Path(name).name == name
        if not plain or "\0" in name or not self._inside(name):
            raise NoProjectError(Problem("there is no such project in this folder"))
        return self.place / name

    def text(self, name: str) -> str:
        """What a project says now.

        Raises:
            InputError: it cannot be read.
        """
        return read_text(self.path(name))

    def save(self, name: str, text: str, seen: str) -> tuple[str, ...]:
        """Write a project whole, where it is still the one that was seen.

        Raises:
            ChangedError: it was changed meanwhile; nothing is written.
            InputError: it cannot be written.
        """
        path = self.path(name)

        def change(now: str) -> str:
            refuse_changed(now, seen, path)
            return _ends_as(text, now)

        return update_file(path, change)

    def add(self, name: str, text: str) -> str:
        """Write a new project; its name, with its ending.

        Raises:
            InputError: the name is none that is used here, or there is one already.
        """
        whole = name.strip()
        whole = whole if whole.endswith(ENDINGS) else f"{whole}.yaml"
        if len(whole) > LONGEST or not _NAME.fullmatch(whole):
            raise InputError(
                Problem(
                    "this is no name for a file", None, "letters, digits, spaces and - in the name"
                )
            )
        write_whole(self.place / whole, text, replace=False)
        return whole

    def told(self, problem: Problem) -> str:
        """A problem in words, without the way to this folder."""
        return str(problem).replace(f"{self.place}{os.sep}", "")

    def _inside(self, name: str) -> bool:
        """Whether a name stands for an ordinary file that lies in this folder itself."""
        try:
            whole = (self.place / name).resolve(strict=True)
        except (OSError, RuntimeError, ValueError):
            return False
        return whole.is_file() and whole.parent == self.place


def _ends_as(text: str, now: str) -> str:
    """A text with the line ends that the file has; a form always sends the long ones."""
    plain = text.replace("\r\n", "\n").replace("\r", "\n")
    return plain.replace("\n", "\r\n") if "\r\n" in now else plain

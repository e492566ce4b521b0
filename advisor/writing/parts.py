"""Puts single parts into a project file or takes them out: a cloth, a place; comments stay."""

from __future__ import annotations

from collections.abc import Callable, Mapping, Sequence
from pathlib import Path
from typing import TYPE_CHECKING, Any

from advisor.errors import InputError, shown
from advisor.textio.editing import Edit, edited
from advisor.writing.meanwhile import refuse_changed

if TYPE_CHECKING:
    from advisor.knowledge.model import Knowledge

Change = Callable[[Any], Sequence[Edit]]
"""Given what a project says, the edits that change a part of it."""


def change_parts(file: Path, change: Change, known: Knowledge, seen: str) -> tuple[str, ...]:
    """Change parts of a project, if it can be read as one afterwards.

    Args:
        file: the project.
        change: what is changed.
        known: what the project is read by.
        seen: the mark of the text that the maker saw.

    Returns:
        what could not be kept of the file, to be told; mostly nothing.

    Raises:
        InputError: the change has no place, or what comes out is no project, or the file is no
            longer the one that was seen; nothing is written.
    """
    from advisor.project.load import garment_of
    from advisor.textio.files import update_file
    from advisor.textio.yamlfile import parse_yaml

    def changed(text: str) -> str:
        refuse_changed(text, seen, file)
        new = edited(text, change(parse_yaml(text, str(file)).data), str(file))
        garment_of(parse_yaml(new, str(file)), known)
        return new

    return update_file(file, changed)


def cloth(name: str, phrase: str, more: Mapping[str, str] | None = None) -> Change:
    """A cloth more, or another phrase for one that is there.

    Args:
        name: what it is called in the project.
        phrase: what it is.
        more: other facts of it, such as its colour; what is said of none stays as it is.
    """
    said = {key: value for key, value in (more or {}).items() if value}

    def change(data: Any) -> Sequence[Edit]:
        about = data["fabrics"].get(name)
        if isinstance(about, dict):
            facts = {"fabric": phrase, **said}
            return [(("fabrics", name, key), value) for key, value in facts.items()]
        return [(("fabrics", name), {"fabric": phrase, **said} if said else phrase)]

    return change


def without_cloth(name: str) -> Change:
    """A cloth less; reading the project then says where it is still wanted."""
    return lambda _: [(("fabrics", name), None)]


def place(
    name: str, layers: Sequence[str], notion: str, more: Mapping[str, str] | None = None
) -> Change:
    """A place more, its layers from the one under the iron down, and then a notion if any.

    `more` are other facts of it, such as its kind and its length; those that are empty are left
    out.
    """
    listed: list[object] = [*layers, *([{"notion": notion}] if notion else [])]
    said = {key: value for key, value in (more or {}).items() if value}

    def change(data: Any) -> Sequence[Edit]:
        return [(("seams", len(data["seams"])), {"name": name, "layers": listed, **said})]

    return change


def part(name: str, layers: Sequence[str], separate: Sequence[str], fitting: str) -> Change:
    """A part of the garment more, or another in place of one: its layers from the body outwards."""
    said = {"layers": list(layers), "separate": list(separate), "fitting": fitting}
    about = {key: value for key, value in said.items() if value}

    def change(data: Any) -> Sequence[Edit]:
        if not data.get("parts"):
            return [(("parts",), {name: about})]
        return [(("parts", name), about)]

    return change


def without_part(name: str) -> Change:
    """A part less; its places stay."""

    def change(data: Any) -> Sequence[Edit]:
        there = data.get("parts") or {}
        if name not in there:
            raise InputError(f"there is no part {shown(name)}")
        return [(("parts",) if len(there) == 1 else ("parts", name), None)]

    return change


def without_place(name: str) -> Change:
    """A place less."""

    def change(data: Any) -> Sequence[Edit]:
        found = [i for i, seam in enumerate(data["seams"]) if _named(seam) == name]
        if not found:
            raise InputError(f"there is no place {shown(name)}")
        if len(data["seams"]) == 1:
            raise InputError("a garment has at least one place")
        return [(("seams", found[0]), None)]

    return change


def _named(seam: Any) -> str:
    return " ".join(str(seam.get("name", "")).split())

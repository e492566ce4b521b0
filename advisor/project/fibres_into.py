"""Writes the fibres that a cloth may be of into a project file, and changes nothing else in it.

Only the few letters of that value are replaced, so that comments, spaces and quotes all stay; the
places come from the YAML reader. What was written is read again before it is kept.
"""

from __future__ import annotations

import re
from pathlib import Path
from typing import Any

from advisor.errors import InputError, Problem, Where, nearest
from advisor.knowledge.model import Knowledge, Mix
from advisor.textio import yamledit
from advisor.textio.files import update_file

_UNKNOWN = re.compile(
    r",?\s*\b(?:(?:unknown|mystery)\s+fib(?:re|er)s?|fib(?:re|er)s?\s+unknown)\b", re.IGNORECASE
)
_PLAIN = re.compile(r"[A-Za-z][A-Za-z0-9 /.-]*")


def write_fibres(path: Path, cloth: str, mixes: tuple[Mix, ...], knowledge: Knowledge) -> str:
    """Write the fibres of one cloth into a project file, and return what now stands there.

    Args:
        path: the project file.
        cloth: the name of the cloth in the project.
        mixes: what it may be; the one where it is only one, else a list.
        knowledge: where the words of the file are looked up.

    Raises:
        InputError: the file cannot be used, has no such cloth, or says something else of it.
    """
    from advisor.project.load import garment_of
    from advisor.textio.yamlfile import parse_yaml

    value = fibres_value(mixes)

    def change(text: str) -> str:
        garment_of(parse_yaml(text, str(path)), knowledge)  # a file that is wrong stays as it is
        changed = insert_fibres(text, cloth, value, str(path))
        garment = garment_of(parse_yaml(changed, str(path)), knowledge)
        if not _fibres_of(mixes) <= _fibres_of(garment.cloths[cloth].mixes):
            by_hand = f"'{cloth}' cannot be changed here; write it by hand: fibres: {value}"
            raise InputError(Problem(by_hand, Where(str(path))))
        return changed

    update_file(path, change)
    return value


def _fibres_of(mixes: tuple[Mix, ...]) -> set[frozenset[str]]:
    """The fibres of each mix, whatever their shares."""
    return {frozenset(fibre for fibre, _ in mix) for mix in mixes}


def fibres_value(mixes: tuple[Mix, ...]) -> str:
    """The value of `fibres` for what a cloth may be."""
    if len(mixes) == 1 and all(share is not None for _, share in mixes[0]):
        return "{" + ", ".join(f"{fibre}: {share:g}" for fibre, share in mixes[0]) + "}"
    words = [" ".join(_part(fibre, share) for fibre, share in mix) for mix in mixes]
    return words[0] if len(words) == 1 else f"[{', '.join(words)}]"


def _part(fibre: str, share: float | None) -> str:
    return fibre if share is None else f"{fibre} {share:g}"


def insert_fibres(text: str, cloth: str, value: str, file: str) -> str:
    """The text of a project with the fibres of one cloth set to `value`."""
    root = yamledit.tree_of(text)
    fabrics = yamledit.child(root, "fabrics")
    node = yamledit.child(fabrics, cloth) if fabrics is not None else None
    if node is None:
        known = [key.value for key, _ in fabrics.value] if fabrics is not None else []
        raise InputError(
            Problem(f"no cloth '{cloth}' under `fabrics`", Where(file), None, nearest(cloth, known))
        )
    if not isinstance(node.value, list):  # a phrase: it becomes a group of keys
        phrase = _known_phrase(node.value)
        return yamledit.replaced(
            text,
            node.start_mark.index,
            node.end_mark.index,
            f"{{fabric: {phrase}, fibres: {value}}}",
        )
    fabric = yamledit.child(node, "fabric")
    if fabric is not None and _UNKNOWN.search(str(fabric.value)):
        start, end = fabric.start_mark.index, fabric.end_mark.index
        text = yamledit.replaced(text, start, end, _known_phrase(fabric.value))
        return insert_fibres(text, cloth, value, file)
    return _into_group(text, node, value)


def _into_group(text: str, node: Any, value: str) -> str:
    key = next((k for k, _ in node.value if k.value == "fibres"), None)
    if key is not None:
        old = yamledit.child(node, "fibres")
        start = text.index(":", key.end_mark.index) + 1
        return yamledit.replaced(text, start, yamledit.end(old), f" {value}")
    last = yamledit.end(node.value[-1][1])
    if node.flow_style:
        return yamledit.replaced(text, last, last, f", fibres: {value}")
    line_end = re.compile(r"\r?\n|$").search(text, last)
    at = line_end.start() if line_end else len(text)
    newline = "\r\n" if "\r\n" in text else "\n"
    indent = " " * node.value[0][0].start_mark.column
    return yamledit.replaced(text, at, at, f"{newline}{indent}fibres: {value}")


def _known_phrase(phrase: str) -> str:
    """The words for a cloth without "fibre unknown", quoted where YAML would misread them."""
    words = " ".join(_UNKNOWN.sub(" ", phrase).split()).strip(" ,;")
    if _PLAIN.fullmatch(words):
        return words
    return '"' + words.replace("\\", "\\\\").replace('"', '\\"') + '"'

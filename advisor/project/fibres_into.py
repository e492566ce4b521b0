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
from advisor.textio.files import write_whole

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
    from advisor.textio.yamlfile import parse_yaml, read_yaml

    garment_of(read_yaml(path), knowledge)  # nothing is written into a file that is wrong already
    with path.open(encoding="utf-8", newline="") as stream:
        text = stream.read()
    value = fibres_value(mixes)
    changed = insert_fibres(text, cloth, value, str(path))
    garment = garment_of(parse_yaml(changed.removeprefix("\ufeff"), str(path)), knowledge)
    if set(garment.cloths[cloth].mixes) != set(mixes):
        raise InputError(
            Problem(
                f"'{cloth}' cannot be changed here; write it by hand: fibres: {value}",
                Where(str(path)),
            )
        )
    write_whole(path, changed, replace=True)
    return value


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
    from ruamel.yaml import YAML

    root = YAML().compose(text)
    fabrics = _child(root, "fabrics")
    node = _child(fabrics, cloth) if fabrics is not None else None
    if node is None:
        known = [key.value for key, _ in fabrics.value] if fabrics is not None else []
        raise InputError(
            Problem(f"no cloth '{cloth}' under `fabrics`", Where(file), None, nearest(cloth, known))
        )
    if not isinstance(node.value, list):  # a phrase: it becomes a group of keys
        phrase = _known_phrase(node.value)
        return _replaced(
            text,
            node.start_mark.index,
            node.end_mark.index,
            f"{{fabric: {phrase}, fibres: {value}}}",
        )
    fabric = _child(node, "fabric")
    if fabric is not None and _UNKNOWN.search(str(fabric.value)):
        start, end = fabric.start_mark.index, fabric.end_mark.index
        text = _replaced(text, start, end, _known_phrase(fabric.value))
        return insert_fibres(text, cloth, value, file)
    return _into_group(text, node, value)


def _into_group(text: str, node: Any, value: str) -> str:
    key = next((k for k, _ in node.value if k.value == "fibres"), None)
    if key is not None:
        old = _child(node, "fibres")
        start = text.index(":", key.end_mark.index) + 1
        return _replaced(text, start, _end(old), f" {value}")
    last = _end(node.value[-1][1])
    if node.flow_style:
        return _replaced(text, last, last, f", fibres: {value}")
    line_end = re.compile(r"\r?\n|$").search(text, last)
    at = line_end.start() if line_end else len(text)
    newline = "\r\n" if "\r\n" in text else "\n"
    indent = " " * node.value[0][0].start_mark.column
    return _replaced(text, at, at, f"{newline}{indent}fibres: {value}")


def _end(node: Any) -> int:
    """Where the last word of a value ends; a block ends there, not where the next thing begins."""
    if isinstance(node.value, list) and not node.flow_style and node.value:
        last = node.value[-1]
        return _end(last[1] if isinstance(last, tuple) else last)
    return int(node.end_mark.index)


def _child(node: Any, name: str) -> Any:
    if not isinstance(getattr(node, "value", None), list):
        return None
    return next((v for k, v in node.value if getattr(k, "value", None) == name), None)


def _known_phrase(phrase: str) -> str:
    """The words for a cloth without "fibre unknown", quoted where YAML would misread them."""
    words = " ".join(_UNKNOWN.sub(" ", phrase).split()).strip(" ,;")
    if _PLAIN.fullmatch(words):
        return words
    return '"' + words.replace("\\", "\\\\").replace('"', '\\"') + '"'


def _replaced(text: str, start: int, end: int, new: str) -> str:
    return text[:start] + new + text[end:]

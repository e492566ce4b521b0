"""Pins the numbers: a checksum of every numeric table, so that a slip of a digit fails.

A pin covers one entry of the knowledge (its numbers, with their keys) or one module of constants.
`python -m tests.corpus.pins` names what has changed; with `--write` the pins are set anew, which is
done only after the changed numbers have been read against their sources.
"""

from __future__ import annotations

import hashlib
import importlib
import json
import pkgutil
import re
import sys
from collections.abc import Iterator
from pathlib import Path
from typing import Any

import advisor.craft
import advisor.heat.model
from tests.corpus import audit

FILE = Path(__file__).with_name("pins.yaml")
SHELVES = ("aspects", "fibres", "fabrics", "notions", "rules", "machines", "seams", "kit")
SPOKEN = ("/when/", "/sold in/fibres")
"""Where numbers stand inside words: `under 90`, `cotton 97 elastane 3`."""
HEAD = """\
# Checksums of the numeric tables; see pins.py.
# Set anew with: python -m tests.corpus.pins --write
"""


def numbers(raw: Any, path: str = "") -> Iterator[tuple[str, float]]:
    """Every number below a value, with the way to it."""
    if isinstance(raw, bool):
        return
    if isinstance(raw, int | float):
        yield path, float(raw)
    elif isinstance(raw, str) and any(part in path for part in SPOKEN):
        for i, found in enumerate(re.findall(r"\d+(?:\.\d+)?", raw)):
            yield f"{path}/{i}", float(found)
    elif isinstance(raw, dict):
        for key, inner in raw.items():
            yield from numbers(inner, f"{path}/{key}")
    elif isinstance(raw, list | tuple):
        for i, inner in enumerate(raw):
            yield from numbers(inner, f"{path}/{i}")


def checksum(raw: Any) -> str:
    """Ten letters that change with any number or its place."""
    told = json.dumps([[path, value] for path, value in numbers(raw)])
    return hashlib.sha256(told.encode()).hexdigest()[:10]


def current() -> dict[str, dict[str, str]]:
    """The checksum of everything that holds numbers, by shelf and entry."""
    pins: dict[str, dict[str, str]] = {}
    for shelf in SHELVES:
        for id_, item in sorted(getattr(audit.book(), shelf).items()):
            raw = item.form.model_dump(mode="json", by_alias=True, exclude_defaults=True)
            raw.pop("examples", None)
            if any(numbers(raw)):
                pins.setdefault(shelf, {})[id_] = checksum(raw)
    pins["formulas"] = {name: checksum(table) for name, table in sorted(constants().items())}
    return pins


def constants() -> dict[str, Any]:
    """The numeric constants of the calculations and of the units, by module."""
    rooms = (advisor.craft, advisor.heat.model)
    names = [m.name for r in rooms for m in pkgutil.walk_packages(r.__path__, f"{r.__name__}.")]
    found = {}
    for name in [*names, "advisor.units.factors"]:
        module = importlib.import_module(name)
        table = {k: plain(v) for k, v in sorted(vars(module).items()) if k.isupper()}
        if any(numbers(table)):
            found[name.removeprefix("advisor.")] = table
    return found


def plain(value: Any) -> Any:
    """A constant as lists, keys and numbers; a named thing by its fields."""
    if isinstance(value, dict):
        return {str(k): plain(v) for k, v in value.items()}
    if isinstance(value, list | tuple):
        return [plain(v) for v in value]
    if isinstance(value, frozenset | set):
        return sorted(plain(v) for v in value)
    if hasattr(value, "numerator") and not isinstance(value, int):
        return float(value)
    fields = getattr(value, "__struct_fields__", None)
    return {k: plain(getattr(value, k)) for k in fields} if fields else value


def changed(kept: dict[str, dict[str, str]]) -> list[str]:
    """What differs from the pins, named."""
    lines = []
    now = current()
    for shelf in sorted({*kept, *now}):
        old, new = kept.get(shelf, {}), now.get(shelf, {})
        lines += [
            f"{shelf} {i}: its numbers have changed"
            for i in sorted(set(old) & set(new))
            if old[i] != new[i]
        ]
        lines += [f"{shelf} {i}: not pinned yet" for i in sorted(set(new) - set(old))]
        lines += [f"{shelf} {i}: pinned, but gone" for i in sorted(set(old) - set(new))]
    return lines


def text(pins: dict[str, dict[str, str]]) -> str:
    """The pins as YAML; quoted, since some checksums look like numbers."""
    lines = [HEAD.rstrip()]
    for shelf, rows in pins.items():
        lines += [f"{shelf}:", *(f'  {id_}: "{sum_}"' for id_, sum_ in rows.items())]
    return "\n".join(lines) + "\n"


def main(arguments: list[str]) -> int:
    """Name what has changed, or set the pins anew."""
    from advisor.textio.yamlfile import read_yaml

    kept = read_yaml(FILE).data if FILE.exists() else {}
    lines = changed(kept)
    sys.stdout.write("".join(f"{line}\n" for line in lines))
    if "--write" in arguments:
        FILE.write_text(text(current()), encoding="utf-8")
    return 1 if lines and "--write" not in arguments else 0


if __name__ == "__main__":
    sys.exit(main(sys.argv[1:]))

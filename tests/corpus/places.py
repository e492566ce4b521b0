"""Where each source can be opened: what kind of place it names, and whether that is well formed."""

from __future__ import annotations

import re
from pathlib import Path

from tests.corpus import audit

_WORKS = Path(__file__).parent.parent / "published" / "works"
ADDRESS = re.compile(r"https?://[^\s;)]+")
_ISBN = re.compile(r"ISBN ([\dX-]+)")
_DOI = re.compile(r"doi:(\S+)")
_COPIED = ("crhowto", "trantor", "zlib", "b-ok", "epdf")
"""Words in the addresses of hosts that put up whole books without leave."""


def isbn_holds(number: str) -> bool:
    """Whether the check digit of an ISBN of 10 or 13 figures is right (ISO 2108)."""
    figures = [10 if c == "X" else int(c) for c in number if c != "-"]
    if len(figures) == 13:
        return sum(f * (3 if i % 2 else 1) for i, f in enumerate(figures)) % 10 == 0
    return len(figures) == 10 and sum(f * (10 - i) for i, f in enumerate(figures)) % 11 == 0


def without_place() -> list[str]:
    """Sources that neither say where they are nor why they have no place."""
    return [i for i, item in audit.book().sources.items() if _silent(item.form)]


def _silent(form: object) -> bool:
    return bool(getattr(form, "where", None)) == bool(getattr(form, "nowhere", None))


def with_place() -> list[str]:
    """Works that can be opened; notes that stand for no work at all are not counted."""
    return [i for i, item in audit.book().sources.items() if item.form.where]


def works() -> list[str]:
    """Sources that are works; memory, our own steps and what every workroom knows are none."""
    own = ("memory", "estimate", "derived", "common-practice")
    return [i for i, item in audit.book().sources.items() if item.form.kind not in own]


def malformed() -> list[str]:
    """Places that cannot be right: a wrong ISBN, a DOI without its prefix, an address cut off."""
    lines = []
    for id_, item in audit.book().sources.items():
        where = item.form.where or ""
        lines += [f"{id_}: ISBN {n}" for n in _ISBN.findall(where) if not isbn_holds(n)]
        lines += [f"{id_}: doi {n}" for n in _DOI.findall(where) if not re.match(r"10\.\d{4,}/", n)]
        lines += [f"{id_}: {a}" for a in ADDRESS.findall(where) if "." not in a.split("/")[2]]
    return lines


def copies() -> list[str]:
    """Sources and works that were read row by row whose place is such a host."""
    of_works = {
        path.stem: path.read_text(encoding="utf-8") for path in sorted(_WORKS.glob("*.yaml"))
    }
    of_sources = {i: item.form.where or "" for i, item in audit.book().sources.items()}
    said = [(name, text) for each in (of_sources, of_works) for name, text in each.items()]
    return [
        f"{name}: {address}"
        for name, text in said
        for address in ADDRESS.findall(text)
        if any(word in address for word in _COPIED)
    ]

"""Where each source can be opened: what kind of place it names, and whether that is well formed."""

from __future__ import annotations

import re

from tests.corpus import audit

ADDRESS = re.compile(r"https?://[^\s;)]+")
_ISBN = re.compile(r"ISBN ([\dX-]+)")
_DOI = re.compile(r"doi:(\S+)")


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

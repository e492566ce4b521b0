"""What is known: cloths by name, fibre or trait, everything about one thing, and the examples."""

from __future__ import annotations

from pathlib import Path

from msgspec import Struct
from starlette.requests import Request
from starlette.responses import Response

from advisor.answer.catalogue import search
from advisor.errors import InputError, Problem, nearest
from advisor.explain.about import explain
from advisor.page.desk import UNITS
from advisor.page.shown import Fields, at, desk_of, page, see, slips_of


class KnownLine(Struct, frozen=True):
    """A line of what is known: a heading, a label with its text, or a sentence."""

    kind: str
    text: str
    label: str = ""


def fabrics(request: Request) -> Response:
    """The cloths that a word fits."""
    desk, word = desk_of(request), request.query_params.get("word", "")[:100]
    known = desk.known
    found = search(word, known)
    about = {"title": "Cloths that are known", "word": word, "found": found}
    if not found:
        names = [*known.names, *known.fibre_names, *known.traits]
        error = InputError(Problem("no cloth fits this word", None, None, nearest(word, names)))
        return page(request, "fabrics.html", {**about, "slips": slips_of(error, desk)}, 404)
    return page(request, "fabrics.html", about)


def about(request: Request) -> Response:
    """Everything about one cloth, fibre, rule, source or aspect."""
    desk, query = desk_of(request), request.query_params
    name, units = query.get("name", "")[:200], query.get("units", "")
    shown = {"title": name or "What is known", "name": name, "units": units, "lines": ()}
    if units not in UNITS:
        raise InputError("units are metric or us")
    try:
        told, _ = explain(name, desk.known, "us" if units == "us" else "metric")
    except InputError as error:
        return page(request, "about.html", {**shown, "slips": slips_of(error, desk)}, 404)
    return page(request, "about.html", {**shown, "lines": lines_of(told)})


def examples(request: Request) -> Response:
    """Whole projects to try."""
    found = sorted(path.stem for path in _examples().glob("*.yaml"))
    return page(request, "examples.html", {"title": "Example projects", "found": found})


def copy_example(request: Request, fields: Fields) -> Response:
    """Copy an example into the folder, and go there."""
    name, folder = fields.get("name", ""), desk_of(request).folder
    found = {path.stem: path for path in _examples().glob("*.yaml")}
    if name not in found:
        raise InputError("there is no such example")
    if f"{name}.yaml" in folder.names():
        return see(at("project", f"{name}.yaml"))
    return see(at("project", folder.add(name, found[name].read_text(encoding="utf-8"))))


def lines_of(told: list[str]) -> tuple[KnownLine, ...]:
    """Lines made for a terminal, put together again to sentences that any width can wrap."""
    found: list[KnownLine] = []
    for text in told:
        line = _line(text, found[-1] if found else None)
        if line is None:
            found[-1] = _joined(found[-1], text)
        elif line.text or line.label:
            found.append(line)
    return tuple(found)


def _line(text: str, before: KnownLine | None) -> KnownLine | None:
    """A line of its own; None where it goes on with the one before."""
    bare = text.strip()
    if not bare:
        return KnownLine("gap", "", " ") if before else KnownLine("gap", "")
    if set(bare) == {"="}:
        return None
    if not text.startswith(" "):
        return KnownLine("heading" if bare.isupper() else "text", bare)
    deep = len(text) - len(text.lstrip())
    if deep > 3 and before is not None and before.kind != "gap":
        return None
    label, gap, rest = bare.partition("  ")
    return KnownLine("row", rest.strip(), label) if gap else KnownLine("text", bare)


def _joined(line: KnownLine, text: str) -> KnownLine:
    bare = text.strip()
    if set(bare) == {"="}:
        return KnownLine("title", line.text)
    return KnownLine(line.kind, f"{line.text} {bare}", line.label)


def _examples() -> Path:
    from advisor.knowledge.place import knowledge_folder

    return knowledge_folder() / "examples"

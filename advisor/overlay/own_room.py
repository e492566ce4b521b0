"""Reads what a maker keeps beside cloths and rules: her rack of thread and her prices.

What is wrong is left out and named, one reel at a time; the rest counts.
"""

from __future__ import annotations

from collections.abc import Mapping
from pathlib import Path
from typing import Any

from advisor.errors import InputError, Problem, Where, nearest, shown
from advisor.knowledge.mine import QUOTE, RACK, Mine, Reel, read_colour
from advisor.knowledge.names import plain_name
from advisor.knowledge.pricing import Quoting
from advisor.knowledge.schema_mine import OwnQuoteForm, RackForm, ReelForm
from advisor.project.quoting import problems_of
from advisor.textio.validation import problems_from_validation
from advisor.textio.yamlfile import Document, parse_yaml, read_yaml
from advisor.units import parse


def read_room(
    folder: Path, fibres: tuple[str, ...], changes: Mapping[Path, str] | None = None
) -> tuple[Mine, list[Problem]]:
    """What she keeps, and what of it is left out.

    Args:
        folder: her own.
        fibres: the words for what thread is made of.
        changes: texts that count instead of the files of these paths.
    """
    problems: list[Problem] = []
    quote = _quote(folder, changes or {}, problems)
    rack = _form(folder / RACK, RackForm, changes or {}, problems)
    if rack is None:
        return Mine(quote=quote), problems
    form, document = rack
    reels = [_reel(raw, i, document, fibres, problems) for i, raw in enumerate(form.reels or ())]
    named: dict[str, Reel] = {}
    for i, reel in enumerate(reels):
        if reel is not None and plain_name(reel.name) in named:
            text = f"you have a reel called '{reel.name}' already"
            problems.append(Problem(text, document.where("reels", i)))
        elif reel is not None:
            named[plain_name(reel.name)] = reel
    return Mine(tuple(named.values()), form.near, quote), problems


def _quote(folder: Path, changes: Mapping[Path, str], problems: list[Problem]) -> Quoting:
    """What she charges by; what is wrong of it is left out."""
    found = _form(folder / QUOTE, OwnQuoteForm, changes, problems)
    if found is None:
        return Quoting()
    quoting, wrong = problems_of(found[1].data or {}, found[1].where)
    problems += wrong
    return quoting


def _form(
    path: Path, model: type[Any], changes: Mapping[Path, str], problems: list[Problem]
) -> tuple[Any, Document] | None:
    """The form that a file of hers fills, with the document; None where there is none."""
    from pydantic import ValidationError

    if path not in changes and not path.is_file():
        return None
    try:
        document = parse_yaml(changes[path], str(path)) if path in changes else read_yaml(path)
        return model.model_validate(document.data or {}), document
    except ValidationError as error:
        problems += problems_from_validation(
            error, document.data, document.positions, document.file, model=model
        )
    except InputError as error:
        problems += error.problems
    return None


def _reel(
    raw: Any, i: int, document: Document, fibres: tuple[str, ...], problems: list[Problem]
) -> Reel | None:
    from pydantic import ValidationError

    try:
        form = ReelForm.model_validate(raw)
    except ValidationError as error:
        first = error.errors()[0]
        path = ".".join(str(step) for step in first["loc"])
        text = f"a reel is not understood: {path}: {first['msg'].lower()}"
        problems.append(Problem(text, document.where("reels", i)))
        return None
    try:
        return _made(form, fibres, document.where("reels", i))
    except InputError as error:
        problems += error.problems
        return None


def _made(form: ReelForm, fibres: tuple[str, ...], where: Where) -> Reel:
    code, lab = "", None
    if form.colour is not None and any(c.isdigit() or c == "#" for c in form.colour):
        try:
            code, lab = read_colour(form.colour)
        except ValueError as error:
            what = f"'{form.name}': {shown(form.colour)} is no colour that can be measured"
            raise InputError(Problem(what, where, str(error))) from None
    fibre = plain_name(form.fibre or "")
    known = {plain_name(word): word for word in fibres}
    if fibre and fibre not in known:
        what = f"'{form.name}': no thread is made of '{form.fibre}'"
        raise InputError(Problem(what, where, f"one of {', '.join(fibres)}", nearest(fibre, known)))
    try:
        tex = None if form.size is None else parse("tex", form.size)
    except ValueError as error:
        raise InputError(Problem(f"'{form.name}': {error}", where)) from None
    return Reel(form.name, code, lab, known.get(fibre, ""), tex)

"""From what was typed into a form to the main part of a page; knows nothing of the network."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import dataclass, replace

from advisor.errors import InputError
from advisor.knowledge.model import Knowledge
from advisor.project.garment import Garment
from advisor.project.names import LONGEST_PHRASE, MOST_LAYERS

PROJECT = "project"
"""What a posted project is called in messages; it has no place on this machine."""
PROJECT_FILE = "FILE"
"""What stands for its file where the sheet names a command."""
Fields = Mapping[str, str]


@dataclass(frozen=True, slots=True)
class Shown:
    """A main part to show, what the page is called, and whose paper it is printed on."""

    title: str
    main: str
    units: str


def ask(fields: Fields, known: Knowledge) -> Shown:
    """How to handle some cloths together, one a line.

    Raises:
        InputError: a cloth is not understood, or none is named.
    """
    return _sheet(_quick(fields, known), known)


def sheet(fields: Fields, known: Knowledge) -> Shown:
    """The handling sheet of a project, chosen as a file or pasted.

    Raises:
        InputError: with every problem of the project.
    """
    from advisor.project.load import garment_of
    from advisor.textio.yamlfile import parse_yaml

    chosen = fields.get("file", "")
    text = chosen if chosen.strip() else fields.get("project", "")
    if not text.strip():
        raise InputError("paste a project or choose its file")
    garment = garment_of(parse_yaml(text.replace("\r\n", "\n"), PROJECT), known)
    return _sheet(_in_units(garment, fields), known, PROJECT_FILE)


def iron(fields: Fields, known: Knowledge) -> Shown:
    """How hot the iron may be across some cloths, from the iron downwards.

    Raises:
        InputError: a cloth is not understood, or none is named.
    """
    from advisor.answer.pipeline import WHOLE, answer
    from advisor.render.iron_html import iron_main

    told = answer(_quick(fields, known), known, WHOLE)
    return Shown(f"{told.garment}: the iron", iron_main(told, known), told.units)


def _sheet(garment: Garment, known: Knowledge, file: str = PROJECT_FILE) -> Shown:
    from advisor.answer.pipeline import WHOLE, answer
    from advisor.render.printed.html import sheet_main

    told = answer(garment, known, replace(WHOLE, file=file))
    return Shown(f"{told.garment}: handling sheet", sheet_main(told), told.units)


def _quick(fields: Fields, known: Knowledge) -> Garment:
    """The garment of the cloths that were typed, one a line."""
    from advisor.project.quick import quick_garment

    phrases = [line.strip() for line in fields.get("cloths", "").splitlines() if line.strip()]
    if not phrases:
        raise InputError("name at least one cloth, one a line, such as nylon organza")
    if len(phrases) > MOST_LAYERS:
        raise InputError(f"at most {MOST_LAYERS} cloths lie in one seam, and here are more")
    if any(len(phrase) > LONGEST_PHRASE for phrase in phrases):
        raise InputError(f"a line has at most {LONGEST_PHRASE} letters")
    return _in_units(quick_garment(list(phrases), known), fields)


def _in_units(garment: Garment, fields: Fields) -> Garment:
    units = fields.get("units", "")
    if not units:
        return garment
    if units not in ("metric", "us"):
        raise InputError("units are metric or us")
    return replace(garment, units=units)


ANSWERS: dict[str, Callable[[Fields, Knowledge], Shown]] = {
    "ask": ask,
    "sheet": sheet,
    "iron": iron,
}

"""What holds for a whole project, chosen from lists: units, fitting, who wears it, the machine."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from typing import Any

from msgspec import Struct
from starlette.requests import Request
from starlette.responses import Response

from advisor.errors import InputError
from advisor.knowledge.factwords import WEARERS
from advisor.knowledge.model import Knowledge
from advisor.page.projects import begun
from advisor.page.shown import Fields, at, desk_of, page, see, slips_of
from advisor.project.facts import OTHER_FEET, machines_of, overlockers_of, read_maker_fact
from advisor.project.methods import FITTINGS, PATTERNS
from advisor.writing.parts import change_parts
from advisor.writing.settings import OF_THE_MAKER, Value, settings

FEET, LIFT = "feet", "foot lift"
NONE = "not said"


class Asking(Struct, frozen=True):
    """One question: its key in the file, how it is asked, and what may be answered."""

    key: str
    label: str
    options: Callable[[Knowledge], tuple[str, ...]]
    hint: str = ""


CHOICES = (
    Asking("units", "Units that are printed", lambda _: ("metric", "us")),
    Asking(
        "fitting",
        "How the garment is fitted",
        lambda _: FITTINGS,
        "To the body: nothing that is past recall comes before its fitting.",
    ),
    Asking("pattern", "The pattern", lambda _: PATTERNS, "A new one asks for a toile first."),
    Asking("worn by", "Who wears it", lambda _: WEARERS, "A child's garment has rules of its own."),
    Asking("machine", "What you sew on", machines_of),
    Asking("overlocker", "Your overlocker", lambda known: ("no", *overlockers_of(known))),
)


def show(request: Request) -> Response:
    """What the project says of itself and of the maker's kit."""
    return _page(request, None)


def change(request: Request, fields: Fields) -> Response:
    """Write what was chosen otherwise, and remember what stood there before."""
    desk, name = desk_of(request), request.path_params["name"]
    path, before = desk.folder.path(name), desk.folder.text(name)
    said = _posted(fields, desk.known)
    try:
        now = _said(desk.read(name).document.data, desk.known)
        wanted = {key: value for key, value in said.items() if value != now[key]}
        change_parts(path, settings(wanted), desk.known, fields.get("mark", "-"))
    except InputError as error:
        return _page(request, said, error)
    if wanted:
        told = tuple(f"{key}: {_words(value)}" for key, value in wanted.items())
        desk.taken[name] = (desk.read(name).mark, before, told)
    return see(at("project", name, "settings"))


def _words(value: Value) -> str:
    return (value if isinstance(value, str) else ", ".join(value)) or NONE


def _posted(fields: Fields, known: Knowledge) -> dict[str, Value]:
    """What the form says of each key."""
    keys = (*(choice.key for choice in CHOICES), LIFT)
    said: dict[str, Value] = {key: " ".join(fields.get(key, "").split()) for key in keys}
    return {**said, FEET: tuple(foot for foot in _feet(known) if f"foot {foot}" in fields)}


def _said(data: Mapping[str, Any], known: Knowledge) -> dict[str, Value]:
    """What the file says of each key, in the words of the form."""
    maker = data.get("maker") or {}
    said: dict[str, Value] = {}
    for key in (*(choice.key for choice in CHOICES), LIFT):
        raw = (maker if key in OF_THE_MAKER else data).get(key)
        said[key] = "" if raw is None else " ".join(str(raw).split())
    for key in ("machine", "overlocker", "worn by"):
        if said[key]:
            said[key] = str(read_maker_fact(key, said[key], known))
    feet = {read_maker_fact("foot", foot, known) for foot in maker.get(FEET) or ()}
    return {**said, FEET: tuple(foot for foot in _feet(known) if foot in feet)}


def _feet(known: Knowledge) -> tuple[str, ...]:
    return (*known.aspects["machine.foot"].words, *OTHER_FEET)


def _page(
    request: Request, said: Mapping[str, Value] | None, error: InputError | None = None
) -> Response:
    read, about = begun(request, "settings")
    desk = desk_of(request)
    said = said or _said(read.document.data, desk.known)
    found = {
        "choices": [(c, _offered(c, str(said[c.key]), desk.known)) for c in CHOICES],
        "said": said,
        "feet": _feet(desk.known),
        "mark": read.mark,
        "unsaid": NONE,
        "just": desk.just(read),
        "slips": slips_of(error, desk) if error else (),
    }
    return page(request, "settings.html", {**about, **found}, 400 if error else 200)


def _offered(choice: Asking, now: str, known: Knowledge) -> tuple[str, ...]:
    """What may be chosen; what the file says stays a choice, though it is said in another way."""
    options = choice.options(known)
    return ("", *options) if now in ("", *options) else ("", now, *options)

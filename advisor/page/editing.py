"""The editor of a project, and the beginning of a new one: a text that is saved whole."""

from __future__ import annotations

from msgspec import Struct
from starlette.requests import Request
from starlette.responses import Response

from advisor.errors import InputError, Problem
from advisor.knowledge.model import Knowledge
from advisor.page.folder import NoProjectError
from advisor.page.projects import UnreadableError
from advisor.page.shown import Fields, at, desk_of, page, see, slips_of
from advisor.project.start import Answers, ClothAnswer, SeamAnswer
from advisor.writing.meanwhile import ChangedError, mark_of

MOST_LINES = 60
_NEW = ("file", "garment", "units", "cloths", "places")


def edit(request: Request) -> Response:
    """The text of a project as it stands, and what is wrong with it."""
    desk, name = desk_of(request), request.path_params["name"]
    text = desk.folder.text(name)
    return _editor(request, name, Held(text, mark_of(text)))


def save(request: Request, fields: Fields) -> Response:
    """Save a text whole; with a slip in it only where she says so."""
    desk, name = desk_of(request), request.path_params["name"]
    desk.folder.path(name)
    text, seen = fields.get("text", ""), fields.get("mark", "-")
    plain = text.replace("\r\n", "\n")
    if not fields.get("anyway") and _wrong(plain, name, desk.known):
        return _editor(request, name, Held(plain, seen), 400)
    try:
        desk.folder.save(name, text, seen)
    except ChangedError as error:
        now = desk.folder.text(name)
        return _editor(request, name, Held(plain, mark_of(now), now, error), 409)
    return see(at("project", name, "edit" if _wrong(plain, name, desk.known) else ""))


def unreadable(request: Request, error: Exception) -> Response:
    """Where a project cannot be read as it stands: its text, with the slips above it."""
    assert isinstance(error, UnreadableError)
    try:
        text = desk_of(request).folder.text(error.name)
    except InputError as unread:  # no text at all: too large, or not UTF-8
        about = {"title": error.name, "slips": slips_of(unread, desk_of(request)), "text": ""}
        return page(request, "message.html", about, 400)
    return _editor(request, error.name, Held(text, mark_of(text)), 400)


def unread(request: Request, error: Exception) -> Response:
    """The same for a guest, who mends nothing."""
    assert isinstance(error, UnreadableError)
    text = "It cannot be read as it stands; it is mended at the machine itself."
    return page(request, "message.html", {"title": error.name, "text": text}, 400)


def new(request: Request) -> Response:
    """A form for a new project."""
    kept = dict.fromkeys(_NEW, "")
    return page(request, "new.html", {"title": "A new project", "kept": kept})


def begin(request: Request, fields: Fields) -> Response:
    """Write a new project from the form, and go to it."""
    from advisor.project.load import garment_of
    from advisor.project.template import project_text
    from advisor.textio.yamlfile import parse_yaml

    desk = desk_of(request)
    kept = {key: fields.get(key, "") for key in _NEW}
    try:
        text = project_text(_answers(kept, desk.known), desk.known)
        garment_of(parse_yaml(text, "project"), desk.known)
        name = desk.folder.add(kept["file"] or _plain(kept["garment"]), text)
    except InputError as error:
        about = {"title": "A new project", "kept": kept, "slips": slips_of(error, desk)}
        return page(request, "new.html", about, 400)
    return see(at("project", name))


class Held(Struct, frozen=True):
    """What the editor holds: a text, the mark of the file that it came from, and the file now."""

    text: str
    mark: str
    now: str = ""
    error: InputError | None = None


def _editor(request: Request, name: str, held: Held, status: int = 200) -> Response:
    desk = desk_of(request)
    wrong = held.error or _wrong(held.text, name, desk.known)
    about = {
        "title": f"Change {name}",
        "project": name,
        "view": "edit",
        "text": held.text,
        "mark": held.mark,
        "now": held.now,
        "slips": slips_of(wrong, desk, held.text, name) if wrong else (),
        "broken": wrong is not None and held.error is None,
    }
    return page(request, "edit.html", about, status)


def _wrong(text: str, name: str, known: Knowledge) -> InputError | None:
    """What keeps a text from being read as a project."""
    from advisor.project.load import garment_of
    from advisor.textio.yamlfile import parse_yaml

    try:
        garment_of(parse_yaml(text, name), known)
    except NoProjectError:
        raise
    except InputError as error:
        return error
    return None


def _answers(kept: dict[str, str], known: Knowledge) -> Answers:
    """What was typed into the form, as the questions at the terminal would have it."""
    from advisor.project.phrase import read_phrase

    found = Answers(garment=" ".join(kept["garment"].split()), units=kept["units"] or "metric")
    for line in _lines(kept["cloths"]):
        name, colon, phrase = line.partition(":")
        words = (phrase if colon else name).strip()
        found.cloths.append(ClothAnswer(name.strip(), words, read_phrase(words, known)))
    names = {cloth.name for cloth in found.cloths}
    for line in _lines(kept["places"]):
        name, _, listed = line.partition(":")
        layers = [layer.strip() for layer in listed.split(",") if layer.strip()]
        if not layers:
            raise InputError(Problem(f"'{name.strip()}' names no cloths", None, _PLACE))
        laid = tuple((layer, layer not in names) for layer in layers)
        found.seams.append(SeamAnswer(name.strip(), laid))
    if found.missing():
        raise InputError(f"still missing: {', '.join(found.missing())}")
    return found


_PLACE = "a place and its cloths, as in 'side seam: shell, lining'"


def _lines(text: str) -> list[str]:
    return [line.strip() for line in text.splitlines() if line.strip()][:MOST_LINES]


def _plain(garment: str) -> str:
    """A file name out of the name of a garment."""
    words = "".join(c if c.isalnum() else " " for c in garment.casefold()).split()
    return "-".join(words)[:60] or "project"

"""How a view shows what it found: a template of the page, and the problems above it."""

from __future__ import annotations

from collections.abc import Callable, Mapping, Sequence
from pathlib import Path
from typing import Any
from urllib.parse import quote, urlencode

from markupsafe import Markup, escape
from msgspec import Struct
from starlette.concurrency import run_in_threadpool
from starlette.datastructures import FormData
from starlette.requests import Request
from starlette.responses import HTMLResponse, RedirectResponse, Response

from advisor.errors import MOST_SHOWN, InputError, Problem
from advisor.page.desk import Desk
from advisor.page.folder import NoProjectError
from advisor.render.markup import rendered

TEMPLATES = Path(__file__).parent / "templates"
Fields = Mapping[str, str]
VIEWS = (
    ("", "Overview"),
    ("sheet", "Sheet"),
    ("places", "Places"),
    ("iron", "Iron"),
    ("order", "Order of work"),
    ("cut", "Cloth"),
    ("label", "Label"),
    ("compare", "Another cloth?"),
    ("booklet", "Booklet to print"),
    ("parts", "Its parts"),
    ("settings", "Settings"),
    ("edit", "Its text"),
)
"""The views of a project, in the order of their links."""
NOT_GUESTS = ("compare", "parts", "settings", "edit")
WAYS = (
    ("/", "Projects"),
    ("/ask", "Ask"),
    ("/iron", "Iron"),
    ("/fabrics", "Cloths"),
    ("/identify", "Unknown fibre"),
    ("/learn", "Your own"),
    ("/examples", "Examples"),
)
GUEST_WAYS = (("/", "Projects"), ("/fabrics", "Cloths"))
"""The ways that every page begins with; a guest reads, and so has fewer."""


class Slip(Struct, frozen=True):
    """A problem in words, its line in the file, and what stands there."""

    text: str
    line: int | None = None
    quoted: str = ""


def desk_of(request: Request) -> Desk:
    """The desk that the application works at."""
    found = request.app.state.desk
    assert isinstance(found, Desk)
    return found


def page(
    request: Request, template: str, about: Mapping[str, Any], status: int = 200
) -> HTMLResponse:
    """A page from a template; `title` has to be among what it is filled with."""
    state = request.app.state
    common = {
        "here": request.url.path,
        "project": None,
        "view": "",
        "views": [view for view in VIEWS if not (state.guest and view[0] in NOT_GUESTS)],
        "top": GUEST_WAYS if state.guest else WAYS,
        "guest": state.guest,
        "sharing": bool(state.shared) and not state.guest,
        "slips": (),
        "at": at,
        "exact": _exact,
        "size": "",
    }
    return HTMLResponse(rendered(template, {**common, **about}, TEMPLATES), status)


def at(*way: str, **query: str) -> str:
    """An address of this page; what is empty in the query is left out."""
    asked = urlencode({key: value for key, value in query.items() if value})
    path = "/" + "/".join(quote(part, safe="") for part in way if part)
    return f"{path}?{asked}" if asked else path


def _exact(text: str) -> Markup:
    """A text to be edited: escaped, and not a letter of it spelled in another way."""
    return escape(text)


def see(where: str) -> RedirectResponse:
    """Lead on to another page after something was posted."""
    return RedirectResponse(where, status_code=303)


def slips_of(error: InputError, desk: Desk, text: str = "", file: str = "") -> tuple[Slip, ...]:
    """The problems of an input, each with its line where that is a line of `file`."""
    lines = text.splitlines()
    found = [_slip(problem, desk, lines, file) for problem in error.problems[:MOST_SHOWN]]
    more = len(error.problems) - MOST_SHOWN
    return (*found, Slip(f"and {more} more")) if more > 0 else tuple(found)


def _slip(problem: Problem, desk: Desk, lines: Sequence[str], file: str) -> Slip:
    where, words = problem.where, desk.folder.told(problem)
    if not file or where is None or where.line is None:
        return Slip(words)
    quoted = lines[where.line - 1] if 0 < where.line <= len(lines) else ""
    return Slip(words.removeprefix(f"{where}: "), where.line, quoted)


def sorry(request: Request, error: Exception) -> Response:
    """A page about an input that cannot be used, and that no form is there to hold."""
    assert isinstance(error, InputError)
    status = 404 if isinstance(error, NoProjectError) else 400
    title = "This is not here" if status == 404 else "This could not be used"
    slips = slips_of(error, desk_of(request))
    return page(request, "message.html", {"title": title, "slips": slips, "text": ""}, status)


def missing(request: Request, _error: Exception) -> Response:
    """A page about an address that leads nowhere."""
    about = {"title": "There is no such page", "text": "The links above lead to what there is."}
    return page(request, "message.html", about, 404)


def fault(request: Request, error: Exception) -> Response:
    """A page about a fault of ours, with nothing of the machine in it."""
    text = f"That is our fault ({type(error).__name__}). Your files are as they were."
    about = {"title": "Something went wrong inside the advisor", "text": text}
    return page(request, "message.html", about, 500)


def posting(view: Callable[[Request, Fields], Response]) -> Callable[[Request], Any]:
    """A view of what was posted: its fields read, and its work done beside the other requests."""

    async def posted(request: Request) -> Response:
        form: FormData = await request.form(max_files=0, max_fields=200)
        fields = {key: value for key, value in form.items() if isinstance(value, str)}
        return await run_in_threadpool(view, request, fields)

    return posted

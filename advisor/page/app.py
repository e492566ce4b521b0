"""The page as one application: every address it has, and what stands before them."""

from __future__ import annotations

from collections.abc import Callable

from starlette.applications import Starlette
from starlette.requests import Request
from starlette.responses import FileResponse, PlainTextResponse, Response
from starlette.routing import Route

from advisor.errors import InputError
from advisor.page import (
    comparing,
    editing,
    identifying,
    knowing,
    parts,
    printing,
    projects,
    questions,
    settings,
    sharing,
    teaching,
)
from advisor.page.desk import Desk
from advisor.page.entrance import ENTER, Entrance
from advisor.page.guard import Guard
from advisor.page.projects import UnreadableError
from advisor.page.sharing import Shared
from advisor.page.shown import TEMPLATES, fault, missing, posting, sorry
from advisor.render.markup import FOLDER

STATIC = {
    "page.css": TEMPLATES.parent / "static" / "page.css",
    "sheet.css": FOLDER / "sheet.css",
    "booklet.css": FOLDER / "booklet.css",
    "awake.js": TEMPLATES.parent / "static" / "awake.js",
}
"""All that is served beside pages, by name; nothing else of the machine has an address."""


def application(
    desk: Desk, hosts: Callable[[], tuple[str, ...]], shared: Shared | None = None
) -> Guard:
    """The page of the maker herself.

    Args:
        desk: what the views work from.
        hosts: the names, with the port, under which it answers.
        shared: how it is shared with a phone, where it is.
    """
    letting_in = [
        Route("/share", sharing.share),
        Route("/share", posting(sharing.change), methods=["POST"]),
    ]
    every = [*_read(), *_ticked(), *_asked(), *_written(), *(letting_in if shared else [])]
    return Guard(_app(every, desk, shared, guest=False), hosts)


def guest_application(desk: Desk, hosts: Callable[[], tuple[str, ...]], shared: Shared) -> Guard:
    """The page for those who are let in: it has no address that changes more than ticks."""
    entrance = [
        Route(ENTER, sharing.enter),
        Route(ENTER, posting(sharing.let_in), methods=["POST"]),
    ]
    app = _app([*entrance, *_read(), *_ticked()], desk, shared, guest=True)
    return Guard(Entrance(app, shared.door, shared.cookie), hosts)


def _app(routes: list[Route], desk: Desk, shared: Shared | None, *, guest: bool) -> Starlette:
    app = Starlette(
        routes=routes,
        exception_handlers={
            InputError: sorry,
            UnreadableError: editing.unread if guest else editing.unreadable,
            404: missing,
            Exception: fault,
        },
    )
    app.state.desk, app.state.shared, app.state.guest = desk, shared, guest
    return app


_ONE = "/project/{name}"


def _read() -> list[Route]:
    """What is only read: projects, and what is known."""
    return [
        Route("/", questions.home),
        Route("/fabrics", knowing.fabrics),
        Route("/about", knowing.about),
        Route(_ONE, projects.overview),
        Route(f"{_ONE}/sheet", projects.sheet),
        Route(f"{_ONE}/places", projects.places),
        Route(f"{_ONE}/why", projects.why),
        Route(f"{_ONE}/iron", projects.iron),
        Route(f"{_ONE}/order", projects.order),
        Route(f"{_ONE}/cut", projects.cut),
        Route(f"{_ONE}/label", projects.label),
        Route(f"{_ONE}/booklet", printing.booklet),
        Route(f"{_ONE}/booklet.css", printing.booklet_style),
        Route("/static/{name}", _static),
    ]


def _ticked() -> list[Route]:
    return [Route(f"{_ONE}/order", posting(projects.tick), methods=["POST"])]


def _asked() -> list[Route]:
    """Questions of the maker herself."""
    return [
        Route("/ask", questions.ask),
        Route("/iron", questions.iron),
        Route("/identify", identifying.identify),
        Route("/examples", knowing.examples),
        Route("/new", editing.new),
        Route("/learn", teaching.learn),
        Route(f"{_ONE}/compare", comparing.compare),
        Route(f"{_ONE}/parts", parts.parts),
        Route(f"{_ONE}/settings", settings.show),
        Route(f"{_ONE}/booklet.pdf", printing.booklet_pdf),
    ]


def _written() -> list[Route]:
    """What writes into the folder or into her own knowledge, ticks apart."""
    return [
        Route("/learn", posting(teaching.keep), methods=["POST"]),
        Route("/identify", posting(identifying.into), methods=["POST"]),
        Route("/examples", posting(knowing.copy_example), methods=["POST"]),
        Route("/new", posting(editing.begin), methods=["POST"]),
        Route(f"{_ONE}/take", posting(projects.take), methods=["POST"]),
        Route(f"{_ONE}/undo", posting(projects.undo), methods=["POST"]),
        Route(f"{_ONE}/parts", posting(parts.change), methods=["POST"]),
        Route(f"{_ONE}/settings", posting(settings.change), methods=["POST"]),
        Route(f"{_ONE}/edit", editing.edit),
        Route(f"{_ONE}/edit", posting(editing.save), methods=["POST"]),
    ]


def _static(request: Request) -> Response:
    found = STATIC.get(request.path_params["name"])
    if found is None:
        return PlainTextResponse("There is no such file.\n", 404)
    kind = "text/javascript" if found.suffix == ".js" else "text/css"
    return FileResponse(found, media_type=f"{kind}; charset=utf-8")

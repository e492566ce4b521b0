"""The page as one application: every address it has, and what stands before them."""

from __future__ import annotations

from collections.abc import Callable

from starlette.applications import Starlette
from starlette.requests import Request
from starlette.responses import FileResponse, PlainTextResponse, Response
from starlette.routing import Route

from advisor.errors import InputError
from advisor.page import editing, identifying, knowing, printing, projects, questions
from advisor.page.desk import Desk
from advisor.page.guard import Guard
from advisor.page.projects import UnreadableError
from advisor.page.shown import TEMPLATES, fault, missing, posting, sorry
from advisor.render.markup import FOLDER

STATIC = {
    "page.css": TEMPLATES.parent / "static" / "page.css",
    "sheet.css": FOLDER / "sheet.css",
    "booklet.css": FOLDER / "booklet.css",
}
"""All that is served beside pages, by name; nothing else of the machine has an address."""


def application(desk: Desk, hosts: Callable[[], tuple[str, ...]]) -> Guard:
    """The page.

    Args:
        desk: what the views work from.
        hosts: the names, with the port, under which it answers.
    """
    app = Starlette(
        routes=[*_general(), *_of_projects()],
        exception_handlers={
            InputError: sorry,
            UnreadableError: editing.unreadable,
            404: missing,
            Exception: fault,
        },
    )
    app.state.desk = desk
    return Guard(app, hosts)


def _general() -> list[Route]:
    return [
        Route("/", questions.home),
        Route("/ask", questions.ask),
        Route("/iron", questions.iron),
        Route("/fabrics", knowing.fabrics),
        Route("/about", knowing.about),
        Route("/identify", identifying.identify),
        Route("/identify", posting(identifying.into), methods=["POST"]),
        Route("/examples", knowing.examples),
        Route("/examples", posting(knowing.copy_example), methods=["POST"]),
        Route("/new", editing.new),
        Route("/new", posting(editing.begin), methods=["POST"]),
        Route("/static/{name}", _static),
    ]


def _of_projects() -> list[Route]:
    one = "/project/{name}"
    return [
        Route(one, projects.overview),
        Route(f"{one}/take", posting(projects.take), methods=["POST"]),
        Route(f"{one}/undo", posting(projects.undo), methods=["POST"]),
        Route(f"{one}/sheet", projects.sheet),
        Route(f"{one}/places", projects.places),
        Route(f"{one}/why", projects.why),
        Route(f"{one}/iron", projects.iron),
        Route(f"{one}/order", projects.order),
        Route(f"{one}/order", posting(projects.tick), methods=["POST"]),
        Route(f"{one}/label", projects.label),
        Route(f"{one}/edit", editing.edit),
        Route(f"{one}/edit", posting(editing.save), methods=["POST"]),
        Route(f"{one}/booklet", printing.booklet),
        Route(f"{one}/booklet.css", printing.booklet_style),
    ]


def _static(request: Request) -> Response:
    found = STATIC.get(request.path_params["name"])
    if found is None:
        return PlainTextResponse("There is no such file.\n", 404)
    return FileResponse(found, media_type="text/css; charset=utf-8")

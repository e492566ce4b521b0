"""Questions that need no project: some cloths together, and the iron across them."""

from __future__ import annotations

from starlette.requests import Request
from starlette.responses import Response

from advisor.answer.model.answer import Answer
from advisor.errors import InputError
from advisor.page.blocks import shown
from advisor.page.desk import Desk, in_units
from advisor.page.shown import desk_of, page, slips_of
from advisor.project.names import LONGEST_PHRASE, MOST_LAYERS
from advisor.render.iron_html import irons_of
from advisor.render.printed.html import sheet_of
from advisor.render.screen.ask import ROOMS, ask_screen


def home(request: Request) -> Response:
    """Where everything begins: the projects of the folder, and a question."""
    names = desk_of(request).folder.names()
    about = {"title": "Sewing advice for unlike cloths", "projects": names, "cloths": ""}
    return page(request, "home.html", about)


def ask(request: Request) -> Response:
    """How to handle some cloths together, one a line."""
    desk, cloths, units = _asked(request)
    about: dict[str, object] = {"cloths": cloths, "units": units, "blocks": (), "sheet": None}
    about["title"] = "How to handle these cloths"
    if not cloths.strip():
        return page(request, "ask.html", about)
    try:
        told = _answer(desk, cloths, units)
    except InputError as error:
        return page(request, "ask.html", {**about, "slips": slips_of(error, desk)}, 400)
    blocks = shown(ask_screen(told, ROOMS[0]))
    found = {"title": told.garment, "blocks": blocks, "sheet": sheet_of(told)}
    return page(request, "ask.html", {**about, **found})


def iron(request: Request) -> Response:
    """How hot the iron may be across some cloths, from the iron downwards."""
    desk, cloths, units = _asked(request)
    about: dict[str, object] = {"cloths": cloths, "units": units, "irons": None}
    about["title"] = "How hot may the iron be?"
    if not cloths.strip():
        return page(request, "iron_ask.html", about)
    try:
        irons = irons_of(_answer(desk, cloths, units))
    except InputError as error:
        return page(request, "iron_ask.html", {**about, "slips": slips_of(error, desk)}, 400)
    return page(request, "iron_ask.html", {**about, "irons": irons})


def _asked(request: Request) -> tuple[Desk, str, str]:
    query = request.query_params
    return desk_of(request), query.get("cloths", ""), query.get("units", "")


def _answer(desk: Desk, cloths: str, units: str) -> Answer:
    """The answer to the cloths that were typed, one a line."""
    from advisor.project.quick import asked_garment

    phrases = [line.strip() for line in cloths.splitlines() if line.strip()]
    if len(phrases) > MOST_LAYERS:
        raise InputError(f"at most {MOST_LAYERS} cloths lie in one seam, and here are more")
    if any(len(phrase) > LONGEST_PHRASE for phrase in phrases):
        raise InputError(f"a line has at most {LONGEST_PHRASE} letters")
    garment = in_units(asked_garment(phrases, desk.known), units)
    return desk.answer_to(garment, tuple(phrases))

"""The booklet of a project, to be printed from the browser."""

from __future__ import annotations

from datetime import date, datetime

from starlette.requests import Request
from starlette.responses import Response

from advisor.answer.label import Asked
from advisor.page.projects import opened
from advisor.page.shown import desk_of, page
from advisor.project.stated import only_named
from advisor.render.printed.booklet import PAPERS, booklet_of, margin_style


def booklet(request: Request) -> Response:
    """Sheet, order, shopping, label, scrap tests and notes, on one long page."""
    read, _, about = opened(request, "booklet")
    desk, query = desk_of(request), request.query_params
    market = query.get("market", "")
    named = only_named(read.document, desk.known)
    told = desk.answer(read, Asked(market or None, read.garment.units, named))
    found = {
        "booklet": booklet_of(told, today(), read.colours),
        "paper": paper_of(query.get("paper", ""), told.units),
        "papers": tuple(PAPERS),
        "market": market,
        "units": query.get("units", ""),
    }
    return page(request, "booklet_page.html", {**about, **found})


def booklet_style(request: Request) -> Response:
    """The paper, and what stands in the margin of each page."""
    read, told, _ = opened(request)
    del read
    paper = paper_of(request.query_params.get("paper", ""), told.units)
    return Response(margin_style(told.garment, today(), paper), media_type="text/css")


def paper_of(asked: str, units: str) -> str:
    """The paper that was asked for, or the one that goes with the units."""
    return asked or ("letter" if units == "us" else "a4")


def today() -> date:
    """The day where she is."""
    return datetime.now().astimezone().date()

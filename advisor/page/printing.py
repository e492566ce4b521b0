"""The booklet of a project, to be printed from the browser."""

from __future__ import annotations

from datetime import date, datetime

from starlette.requests import Request
from starlette.responses import Response

from advisor.page.projects import labelled, opened
from advisor.page.shown import at, page
from advisor.render.printed.booklet import PAPERS, booklet_of, margin_style, render_booklet
from advisor.writing.pdf import browser, pdf_of


def booklet(request: Request) -> Response:
    """Sheet, order, shopping, label, scrap tests and notes, on one long page."""
    read, told, about = labelled(request, "booklet")
    query = request.query_params
    asked = {key: query.get(key, "") for key in ("market", "units")}
    paper = paper_of(query.get("paper", ""), told.units)
    found = {
        "booklet": booklet_of(told, today(), read.colours),
        "paper": paper,
        "papers": tuple(PAPERS),
        **asked,
        "pdf": at("project", read.name, "booklet.pdf", paper=paper, **asked) if browser() else "",
    }
    return page(request, "booklet_page.html", {**about, **found})


def booklet_pdf(request: Request) -> Response:
    """The same as a PDF file, printed by a browser of this machine."""
    read, told, _ = labelled(request, "booklet")
    paper = paper_of(request.query_params.get("paper", ""), told.units)
    raw = pdf_of(render_booklet(told, today(), paper, read.colours), today())
    plain = "".join(c if c.isascii() and c.isalnum() else "-" for c in read.garment.name[:60])
    named = {"Content-Disposition": f'attachment; filename="{plain or "booklet"}.pdf"'}
    return Response(raw, media_type="application/pdf", headers=named)


def booklet_style(request: Request) -> Response:
    """The paper, and what stands in the margin of each page."""
    _, told, _ = opened(request)
    paper = paper_of(request.query_params.get("paper", ""), told.units)
    return Response(margin_style(told.garment, today(), paper), media_type="text/css")


def paper_of(asked: str, units: str) -> str:
    """The paper that was asked for, or the one that goes with the units."""
    return asked or ("letter" if units == "us" else "a4")


def today() -> date:
    """The day where she is."""
    return datetime.now().astimezone().date()

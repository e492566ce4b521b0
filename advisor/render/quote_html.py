"""The quote for a customer as a page to print, that stands by itself in a file."""

from __future__ import annotations

from datetime import date

from advisor.answer.model.answer import Answer
from advisor.render.markup import rendered
from advisor.render.printed.html import document
from advisor.render.quote_view import NOT_READY, customer_quote


def render_quote_page(report: Answer, day: date) -> str:
    """The customer's page, dated."""
    about = {"quote": customer_quote(report, day), "not_ready": NOT_READY}
    return document(f"{report.garment}: quote", rendered("quote.html", about), report.units)

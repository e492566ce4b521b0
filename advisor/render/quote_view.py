"""What a garment costs as rows: for the maker all of it, for a customer what she is asked to pay.

The customer's rows sum to the same total: what comes on top stands within the work.
"""

from __future__ import annotations

from datetime import date

from msgspec import Struct

from advisor.answer.model.answer import Answer
from advisor.answer.model.quote import ToldCost, ToldQuote, ToldSpan
from advisor.units import System
from advisor.units.factors import FEET_PER_M2, MM_PER_YARD

NOT_READY = "Not ready to hand over, for something has no price yet"
GROUPS = {
    "cloth": "Cloth",
    "thread": "Thread",
    "notions": "Notions",
    "others": "Other",
}
TERMS = (
    "The hours are an estimate made before the work begins; cloth is bought as shops cut it, and "
    "what is left over is yours. Changes that you ask for after cutting are agreed on anew."
)


class CustomerQuote(Struct, frozen=True):
    """What a customer is handed: rows with what they cost, the work, the whole and its ends."""

    garment: str
    day: str
    rows: tuple[tuple[str, str, str], ...]
    work: tuple[str, str] | None
    total: str
    ends: str
    missing: tuple[str, ...]
    terms: str = TERMS


def quote_of(report: Answer) -> ToldQuote:
    """The quote of an answer.

    Raises:
        ValueError: it was not asked for.
    """
    if report.quote is None:
        raise ValueError("the answer was not asked for its cost")
    return report.quote


def money(amount: float, currency: str) -> str:
    """Money to hundredths, its currency behind it."""
    return f"{amount:,.2f} {currency}".strip()


def amount_words(line: ToldCost, units: System) -> str:
    """How much of a thing: in m or yd, or how many."""
    if line.amount is None:
        return ""
    if line.unit == "m2":
        square_feet = f"{line.amount * FEET_PER_M2:.3g} sq ft"
        return square_feet if units == "us" else f"{line.amount:.3g} m² ({square_feet})"
    if line.unit != "m":
        return f"{line.amount:g}"
    if units == "us":
        return f"{round(line.amount * 1000 / MM_PER_YARD * 8) / 8:g} yd"
    return f"{line.amount:.3g} m"


def price_words(line: ToldCost, units: System, currency: str) -> str:
    """What one of it costs, in the units that it is counted in."""
    if line.price is None:
        return ""
    if line.unit == "m" and units == "us":
        return f"{money(line.price * MM_PER_YARD / 1000, currency)} per yd"
    if line.unit == "m2" and units == "us":
        return f"{money(line.price / FEET_PER_M2, currency)} per sq ft"
    per = {"m": "per m", "m2": "per m²"}.get(line.unit, "each")
    return f"{money(line.price, currency)} {per}"


def span_words(span: ToldSpan, currency: str) -> str:
    """The ends of an amount of money."""
    return f"{money(span.low, currency)} to {money(span.high, currency)}"


def hour_words(hours: float) -> str:
    """Hours as a person says them: to a quarter up to ten, then to half an hour."""
    step = 4 if hours < 10 else 2
    return f"{round(hours * step) / step:g} h"


def customer_quote(report: Answer, day: date) -> CustomerQuote:
    """What a customer is handed of an answer that was asked what it costs."""
    quote, units = quote_of(report), report.units
    rows = tuple(
        (_for_customer(line), amount_words(line, units), money(line.cost, quote.currency))
        for line in quote.lines
        if line.cost
    )
    things = sum(line.cost or 0.0 for line in quote.lines)
    work = round(quote.total.likely - things, 2)
    return CustomerQuote(
        report.garment,
        f"{day.day} {day:%B %Y}",
        rows,
        (f"Work, about {hour_words(quote.hours.likely)}", money(work, quote.currency)),
        money(quote.total.likely, quote.currency),
        span_words(quote.total, quote.currency),
        quote.missing,
    )


def _for_customer(line: ToldCost) -> str:
    name = line.what or line.name
    return f"{GROUPS[line.group]}: {name}" if line.group != "others" else name

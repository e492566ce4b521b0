"""What a garment costs as text: the maker's own page, and the one for a customer."""

from __future__ import annotations

from datetime import date

from advisor.answer.model.answer import Answer
from advisor.answer.model.quote import ToldCost, ToldQuote
from advisor.render.layout import heading, row, wrap
from advisor.render.printed.numbers import Numbers
from advisor.render.quote_view import (
    GROUPS,
    NOT_READY,
    amount_words,
    customer_quote,
    hour_words,
    money,
    price_words,
    quote_of,
    span_words,
)

_COLUMN = 24


def render_quote(report: Answer) -> str:
    """The maker's page: things, hours by stage, the whole, and how far to trust it."""
    quote = quote_of(report)
    numbers = Numbers(report, most=2, short=True)
    marks = numbers.mark(quote.sources)
    lines = heading(f"{report.garment}: what it costs", 1)
    lines += heading("Things") + _things(report, quote) + heading("Hours")
    lines += _hours(quote, marks) + heading("The whole") + _whole(quote)
    for text in quote.says:
        lines += wrap(text, "  ")
    return "\n".join(lines + numbers.lines()) + "\n"


def _things(report: Answer, quote: ToldQuote) -> list[str]:
    lines: list[str] = []
    for group, title in GROUPS.items():
        for line in (one for one in quote.lines if one.group == group):
            about = f" ({line.what})" if line.what else ""
            lines += row(f"{title.casefold()}", f"{line.name}{about}: {_costs(report, line)}")
    if not quote.lines:
        lines += wrap("No pieces, thread or notions that could be reckoned.", "  ")
    lines += row("together", f"{money(quote.things, quote.currency)}{_wasted(quote)}")
    return lines


def _costs(report: Answer, line: ToldCost) -> str:
    currency = quote_of(report).currency
    if line.cost is None:
        return f"{line.lacks}."
    amount = amount_words(line, report.units)
    price = price_words(line, report.units, currency)
    waste = f", {money(line.wasted, currency)} of it left over" if line.wasted >= 0.01 else ""
    if line.group == "others":
        return f"{money(line.cost, currency)}."
    return f"{amount} at {price}, {money(line.cost, currency)}{waste}."


def _wasted(quote: ToldQuote) -> str:
    if quote.wasted < 0.01:
        return "."
    return f", of which {money(quote.wasted, quote.currency)} is cloth and thread left over."


def _hours(quote: ToldQuote, marks: str) -> list[str]:
    lines: list[str] = []
    for stage in quote.stages:
        own = f", {stage.own} with a time of your own" if stage.own else ""
        steps = f"{stage.steps} step{'' if stage.steps == 1 else 's'}"
        text = f"{stage.minutes:.0f} min, {steps}{own}."
        lines += row(stage.stage, text, column=_COLUMN)
    if not quote.stages:
        return wrap("There is no order of work to reckon hours from.", "  ")
    whole = f"{hour_words(quote.minutes / 60)} as reckoned"
    if quote.finished:
        whole += f", times {quote.ratio.likely:.2f} as your finished garments came out"
    lines += row("together", f"{whole}.", column=_COLUMN)
    ends = f"{hour_words(quote.hours.low)} to {hour_words(quote.hours.high)}"
    told = f"{hour_words(quote.hours.likely)}, probably {ends} {marks}".rstrip()
    return lines + row("so expect", f"{told}.", column=_COLUMN)


def _whole(quote: ToldQuote) -> list[str]:
    lines: list[str] = []
    currency = quote.currency
    if quote.work is not None and quote.hour is not None:
        text = f"{money(quote.work.likely, currency)} at {money(quote.hour, currency)} an hour"
        lines += row("work", f"{text} ({span_words(quote.work, currency)}).", column=_COLUMN)
    if quote.margin:
        lines += row("on top", f"{quote.margin * 100:g} % of things and work.", column=_COLUMN)
    least = "" if quote.complete else "at least "
    text = f"{least}{money(quote.total.likely, currency)} ({span_words(quote.total, currency)})."
    lines += row("total", text, column=_COLUMN)
    if quote.missing:
        lines += row("without", f"{'; '.join(quote.missing)}.", column=_COLUMN)
    return lines


def render_customer(report: Answer, day: date) -> str:
    """The page for a customer; where something has no price it says so first."""
    quote = customer_quote(report, day)
    lines = heading(f"Quote: {quote.garment}", 1)
    if quote.missing:
        lines += wrap(f"{NOT_READY}: {'; '.join(quote.missing)}.")
    lines += [quote.day, "For: ______________________________", ""]
    for name, amount, cost in quote.rows:
        lines += row(name, f"{amount}, {cost}" if amount else cost, column=48)
    if quote.work is not None:
        lines += row(*quote.work, column=48)
    lines += row("Together", quote.total, column=48)
    lines += ["", *wrap(f"As the work turns out it may come to {quote.ends}. {quote.terms}")]
    return "\n".join(lines) + "\n"

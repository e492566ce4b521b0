"""Tools and notions that are called for, as they are told: how many, how wide, in which lengths."""

from __future__ import annotations

from collections.abc import Mapping

from advisor.answer.buyingwords import sold_text
from advisor.answer.model.needed import ToldBend, ToldInstead, ToldNeed, ToldStrip
from advisor.answer.teller import Teller
from advisor.construction.widths import Width
from advisor.craft import boning
from advisor.craft.allowance import strip_square
from advisor.craft.cloth import METRIC_STEP_MM, US_STEP_MM, round_up_to_shop
from advisor.decide.kit import Need


def told_need(need: Need, laid: Mapping[str, str], teller: Teller) -> ToldNeed:
    """A tool or notion that is called for; `laid` says more of what some of them are bought as."""
    step = US_STEP_MM if teller.units == "us" else METRIC_STEP_MM
    buy = None if need.bought is None else round_up_to_shop(need.bought, step)
    return ToldNeed(
        group=need.group,
        item=need.item,
        aspect=need.aspect,
        for_=tuple(need.places),
        state=need.state,
        length_mm=None if need.length is None else round(need.length, 0),
        number=need.number,
        cut_mm=tuple(
            (each.number, None if each.each is None else round(each.each, 2)) for each in need.cut
        ),
        ends_mm=need.ends,
        buy=laid.get(need.item, "") if buy is None else sold_text(buy, teller.units),
        buy_mm=None if buy is None else round(buy, 2),
        least_mm=need.least,
        bends=tuple(
            ToldBend(of, thick, round(radius, 2), teller.cite(boning.SOURCES))
            for of, thick, radius in need.bends
        ),
        strip=_strip(need, buy, teller),
        instead=tuple(
            ToldInstead(s.text, checked=True, sources=teller.cite(s.sources)) for s in need.instead
        ),
        ruled_out=tuple(need.refused),
        width_mm=None if need.width is None else need.width.mm,
        width=_width(need.width),
        round=need.width is not None and need.width.round,
        spare=need.spare,
        apart_mm=need.apart,
        tried=need.tried,
        less_mm=need.less,
    )


def _width(width: Width | None) -> str:
    """Whether a width was said, is usual, or is for her to choose; "" where there is none."""
    if width is None:
        return ""
    return "said" if width.said else "to choose" if width.mm is None else "usual"


def _strip(need: Need, buy: float | None, teller: Teller) -> ToldStrip | None:
    """A strip, and the square that gives as much of it as is told."""
    strip = need.strip
    if strip is None:
        return None
    square = None if not buy else round(strip_square(buy, max(strip.width)), 0)
    return ToldStrip(tuple(round(w, 1) for w in strip.width), square, teller.cite(strip.sources))

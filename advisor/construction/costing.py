"""What the things cost that a garment is made of, line by line, and what of it goes to waste.

Cost is amount bought times price, rounded to hundredths line by line, so that lines sum to the
whole (`derived`). Of cloth the share that no piece uses is waste, of thread what the reels hold
beyond the need. What has no price, or no amount, is a line without a cost, never nothing.
"""

from __future__ import annotations

from collections.abc import Iterable
from typing import Final

from msgspec import Struct
from msgspec.structs import replace

from advisor.claims.judgement import Judgement
from advisor.construction.clothlist import Bought
from advisor.construction.notionlist import notions_to_buy
from advisor.construction.threadlist import ThreadBought
from advisor.craft.cloth import METRIC_STEP_MM, US_STEP_MM, round_up_to_shop
from advisor.knowledge.model import Knowledge
from advisor.knowledge.pricing import (
    AREA,
    EACH,
    METRE,
    Price,
    Quoting,
    price_of,
)
from advisor.project.garment import Garment
from advisor.units.factors import FEET_PER_M2, MM_PER_YARD

CLOTH: Final = "cloth"
THREAD: Final = "thread"
NOTIONS: Final = "notions"
OTHERS: Final = "others"
SQUARE_METRE: Final = 1e6
NO_PRICE: Final = "no price said"
NO_AMOUNT: Final = "how much is not said"


class CostLine(Struct, frozen=True):
    """One thing that is paid for.

    Attributes:
        group: cloth, thread, notions or others.
        amount: m, m², or how many; None where nobody can say.
        unit: `m`, `m2` or `each`.
        price: of one of these; None where she says none.
        cents: what it costs, in hundredths; None where price or amount is missing.
        wasted: of that, what is bought and not used.
        lacks: why there is no cost; "" where there is one.
    """

    group: str
    name: str
    amount: float | None
    unit: str
    price: float | None
    cents: int | None
    wasted: int = 0
    lacks: str = ""


def costs_of(
    judgement: Judgement,
    bought: Iterable[Bought],
    threads: Iterable[ThreadBought],
    quote: Quoting,
    knowledge: Knowledge,
    besides: Iterable[tuple[str, int | None, float | None]] = (),
) -> list[CostLine]:
    """Every line of what a garment costs besides work, in the order of the shopping list.

    `besides` are notions that the project does not name and the list has: how many, or mm of it.
    """
    garment = judgement.garment
    rows = list(bought)
    lines = [_cloth(row, garment, quote, knowledge) for row in rows]
    laid = {row.cloth for row in rows}
    for name, cloth in garment.cloths.items():
        if name not in laid and knowledge.entries[cloth.entry].kind == "cloth":
            price = _named(name, garment, quote, knowledge)
            lines.append(_line(CLOTH, name, None, METRE, _as_sold(price, METRE, garment)))
    lines += [line for row in threads for line in _thread(row, judgement, quote)]
    for notion in notions_to_buy(garment, knowledge):
        if notion.name not in laid:
            price = _named(notion.name, garment, quote, knowledge)
            number = None if notion.number is None else notion.number + notion.spare
            amount, unit = _amount(number, notion.bought, garment)
            price = _as_sold(price, unit, garment)
            lines.append(_line(NOTIONS, notion.name, amount, unit, price))
    named = {line.name for line in lines}
    for name, number, length in besides:
        if name not in named:
            amount, unit = _amount(number, length, garment)
            price = _as_sold(price_of(quote.prices, name), unit, garment)
            lines.append(_line(NOTIONS, name, amount, unit, price))
    for name, money in quote.others.items():
        lines.append(_line(OTHERS, name, 1, EACH, Price(money)))
    return lines


def _amount(number: int | None, length: float | None, garment: Garment) -> tuple[float | None, str]:
    """How much of a notion is bought, as shops cut it, and in which unit."""
    if length is None:
        return number, EACH
    step = US_STEP_MM if garment.units == "us" else METRIC_STEP_MM
    return round_up_to_shop(length, step) / 1000, METRE


def _named(name: str, garment: Garment, quote: Quoting, knowledge: Knowledge) -> Price | None:
    """The price of a cloth or notion: by its name in the project, else by what it is."""
    entry = knowledge.entries[garment.cloths[name].entry]
    return price_of(quote.prices, name, entry.id, entry.name)


def _line(
    group: str, name: str, amount: float | None, unit: str, price: Price | None, waste: float = 0.0
) -> CostLine:
    """A line; a price for another unit than the thing is bought by is no price of it."""
    if price is None or (price.per and price.per != unit):
        lacks = NO_PRICE if price is None else f"its price is for {_words(price.per)}"
        return CostLine(group, name, amount, unit, None, None, lacks=lacks)
    if amount is None:
        return CostLine(group, name, None, unit, price.amount, None, lacks=NO_AMOUNT)
    cents = round(amount * price.amount * 100)
    return CostLine(group, name, amount, unit, price.amount, cents, round(cents * waste))


def _words(per: str) -> str:
    return {METRE: "a metre", AREA: "a square metre"}.get(per, "a piece")


def _as_sold(price: Price | None, unit: str, garment: Garment) -> Price | None:
    """A price of which she does not say the unit is for what her shops measure by."""
    if price is None or price.per or garment.units != "us":
        return price
    sold = {METRE: 1000.0 / MM_PER_YARD, AREA: FEET_PER_M2}.get(unit, 1.0)
    return replace(price, amount=price.amount * sold)


def _cloth(row: Bought, garment: Garment, quote: Quoting, knowledge: Knowledge) -> CostLine:
    length = row.buy_us if garment.units == "us" else row.buy_metric
    used = None if length is None else row.used_of(length)
    amount, unit = None if length is None else length / 1000, METRE
    if row.area is not None:
        amount, unit, used = row.area / SQUARE_METRE, AREA, row.used
    price = _as_sold(_named(row.cloth, garment, quote, knowledge), unit, garment)
    return _line(CLOTH, row.cloth, amount, unit, price, 0.0 if used is None else 1.0 - used)


def _thread(row: ThreadBought, judgement: Judgement, quote: Quoting) -> list[CostLine]:
    """Reels and cones of one colour; what comes off a reel of hers is bought already."""
    about = f"to match {' and '.join(row.to_match)}"
    hers = any(judgement.shades[c].reel for c in row.to_match if c in judgement.shades)
    lines = []
    for number, size in () if hers else row.reels:
        price = price_of(quote.prices, f"reel {size:g} m", "reel")
        used = (row.needle + row.bobbin) / (number * size)
        waste = max(0.0, 1.0 - used)
        name = f"reel of {size:g} m {about}"
        lines.append(_line(THREAD, name, number, EACH, price, waste))
    if row.cones:
        price = price_of(quote.prices, "cone")
        lines.append(_line(THREAD, f"cones {about}", row.cones, EACH, price))
    return lines

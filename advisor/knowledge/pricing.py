"""What a maker charges by: prices of cloth, thread and notions, an hour, her own times.

Light values; a project says them under `quote`, her own folder in `quote.yaml`, and what the
project says goes first. Money is a plain number in whatever currency she names.
"""

from __future__ import annotations

import re
from collections.abc import Mapping
from typing import Final

from msgspec import Struct, field
from msgspec.structs import replace

from advisor.knowledge.names import plain_name
from advisor.units.factors import FEET_PER_M2, MM_PER_YARD

METRE: Final = "m"
EACH: Final = "each"
AREA: Final = "m2"
DEAREST: Final = 1_000_000.0
_UNITS: Final = {
    "m": (METRE, 1.0),
    "metre": (METRE, 1.0),
    "yd": (METRE, 1000.0 / MM_PER_YARD),
    "yard": (METRE, 1000.0 / MM_PER_YARD),
    "each": (EACH, 1.0),
    "piece": (EACH, 1.0),
    "reel": (EACH, 1.0),
    "m2": (AREA, 1.0),
    "m²": (AREA, 1.0),
    "sq ft": (AREA, FEET_PER_M2),
}
ACCEPTED: Final = "18.50, 18.50 per m, 9 per yd, 7 per sq ft or 3 each"
_PRICE: Final = re.compile(r"(\d+(?:\.\d+)?)\s*(?:(?:/|per\s+|a\s+|\s)\s*(m[2²]|sq ft|[a-z]+))?")


class Price(Struct, frozen=True):
    """A price for a metre, an m² or each; `per` is "" where she did not say which."""

    amount: float
    per: str = ""


class Finished(Struct, frozen=True):
    """A garment that she finished: minutes that it was reckoned at, and that it took."""

    garment: str
    reckoned: float
    took: float


class Quoting(Struct, frozen=True):
    """All that she charges by; None and "" where nothing is said.

    Attributes:
        margin: what comes on top of cloth and work, a share.
        prices: by plain name of a cloth, a notion, `reel` or `cone`.
        minutes: her own times, by piece of work or by step.
        others: what else is charged, by name.
    """

    currency: str = ""
    hour: float | None = None
    margin: float | None = None
    prices: dict[str, Price] = field(default_factory=dict)
    minutes: dict[str, float] = field(default_factory=dict)
    others: dict[str, float] = field(default_factory=dict)
    finished: tuple[Finished, ...] = ()


def read_price(text: str) -> Price:
    """A price out of `18.50`, `18.50 per m`, `9/yd` or `3 each`; without a unit it stays open.

    Raises:
        ValueError: it is no price.
    """
    found = _PRICE.fullmatch(" ".join(text.split()).casefold())
    unit = _UNITS.get(found[2] or "") if found else None
    if found is None or (found[2] and unit is None) or not float(found[1]) < DEAREST:
        raise ValueError(f"'{text}' is no price: write {ACCEPTED}")
    amount = float(found[1])
    return Price(amount) if unit is None else Price(amount * unit[1], unit[0])


def laid_over(project: Quoting, own: Quoting) -> Quoting:
    """What the project says, and where it is silent what she says for every project."""
    return replace(
        own,
        currency=project.currency or own.currency,
        hour=own.hour if project.hour is None else project.hour,
        margin=own.margin if project.margin is None else project.margin,
        prices={**own.prices, **project.prices},
        minutes={**own.minutes, **project.minutes},
        others={**own.others, **project.others},
    )


def price_of(prices: Mapping[str, Price], *names: str) -> Price | None:
    """The price that stands under the first of some names that has one."""
    return next((prices[n] for n in map(plain_name, names) if n in prices), None)

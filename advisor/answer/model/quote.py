"""What a garment costs: things, hours by stage, and the whole, each with its range.

Money is in the currency that the maker names, to hundredths; amounts are m or pieces, times min.
"""

from __future__ import annotations

from dataclasses import dataclass


@dataclass(frozen=True, slots=True)
class ToldCost:
    """A thing that is paid for; `cost` is None where `lacks` says why."""

    group: str
    name: str
    amount: float | None
    unit: str
    price: float | None
    cost: float | None
    wasted: float
    lacks: str
    what: str


@dataclass(frozen=True, slots=True)
class ToldStage:
    """The minutes of a stage of work as reckoned, and how many steps have a time of her own."""

    stage: str
    minutes: float
    steps: int
    own: int


@dataclass(frozen=True, slots=True)
class ToldSpan:
    """A figure with the ends that it probably lies between."""

    low: float
    likely: float
    high: float


@dataclass(frozen=True, slots=True)
class ToldQuote:
    """All of it; what is missing is named, and then the totals are the least that it can be.

    Attributes:
        ratio: what reckoned time is multiplied by, from the garments that she finished.
        hours: after that.
        work: money for the hours; None where no price of an hour is said.
        margin: the share that comes on top of things and work.
        total: of everything that is known.
    """

    currency: str
    lines: tuple[ToldCost, ...]
    things: float
    wasted: float
    stages: tuple[ToldStage, ...]
    minutes: float
    finished: int
    ratio: ToldSpan
    hours: ToldSpan
    hour: float | None
    work: ToldSpan | None
    margin: float
    total: ToldSpan
    complete: bool
    missing: tuple[str, ...]
    says: tuple[str, ...]
    sources: tuple[str, ...]

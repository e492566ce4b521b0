"""The forms of what a maker keeps beside cloths and rules: `threads.yaml` and `quote.yaml`."""

from __future__ import annotations

from typing import Annotated, Any

from pydantic import Field

from advisor.knowledge.form import Form, Word

MOST_REELS = 500
FURTHEST = 10.0
"""How far a shared reel may be from a cloth at most; beyond it no eye takes it for the same."""


class ReelForm(Form):
    """A reel of her rack: `colour` is a code, measured L*, a*, b*, or a word."""

    name: Word
    colour: Word | None = None
    fibre: Word | None = None
    size: Word | float | None = None


class RackForm(Form):
    """Her rack; `near` is the difference (CIEDE2000) up to which she lets places share a reel."""

    near: Annotated[float, Field(ge=0, le=FURTHEST)] | None = None
    reels: Annotated[tuple[Any, ...], Field(max_length=MOST_REELS)] | None = None


MOST_PRICES = 500
MOST_FINISHED = 500
Money = Annotated[float, Field(ge=0, lt=1_000_000)]


class FinishedForm(Form):
    """A garment that she finished: what it was reckoned at and what it took, as `7 h 30 min`."""

    garment: Word
    reckoned: Word | float
    took: Word | float


class QuoteForm(Form):
    """What she charges by; her own folder says it for every project, a project for itself."""

    currency: Word | None = None
    hour: Money | None = None
    margin: Word | float | None = None
    prices: Annotated[dict[Word, Word | float], Field(max_length=MOST_PRICES)] | None = None
    minutes: Annotated[dict[Word, Word | float], Field(max_length=MOST_PRICES)] | None = None
    others: Annotated[dict[Word, Money], Field(max_length=MOST_PRICES)] | None = None


class OwnQuoteForm(QuoteForm):
    """The same in her own folder, with the garments that she finished."""

    finished: Annotated[tuple[FinishedForm, ...], Field(max_length=MOST_FINISHED)] = ()

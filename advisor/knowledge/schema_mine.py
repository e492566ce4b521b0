"""The forms of what a maker keeps in her own folder beside cloths and rules: `threads.yaml`."""

from __future__ import annotations

from typing import Annotated, Any

from pydantic import Field

from advisor.knowledge.schema import Form, Word

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

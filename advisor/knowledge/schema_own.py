"""The forms of a maker's own knowledge: a cloth of hers, and what she found when she tried it."""

from __future__ import annotations

from typing import Annotated, Any

from pydantic import Field

from advisor.knowledge.form import Form, Id, Text, Word
from advisor.knowledge.schema import ClaimForm, Note

Setting = float | Word


class OwnResultForm(Form):
    """What she tried on her cloth: the settings that were good, and those that spoilt it.

    `reason` is why a setting above a safety limit is hers to use; without one it is not used.
    """

    good: dict[Word, Setting] = Field(default={})
    bad: dict[Word, Setting] = Field(default={})
    on: Word | None = None
    note: Text | None = None
    reason: Text | None = None


class OwnClothForm(Form):
    """A cloth of hers: like a known one, but with its own name, fibres, measures and results."""

    id: Id
    name: Word
    also: tuple[Word, ...] = ()
    like: Word
    fibres: Word | None = None
    weight: Annotated[float, Field(gt=0, le=5000)] | None = None
    thickness: Annotated[float, Field(gt=0, le=100)] | None = None
    traits: dict[Word, Word] = Field(default={})
    claims: tuple[ClaimForm, ...] = ()
    notes: tuple[Note, ...] = ()
    results: tuple[Any, ...] = ()

"""The forms of `remedies.yaml` and `machines.yaml`: what cures, and what it is sewn with."""

from __future__ import annotations

from typing import Annotated, Any

from pydantic import Field

from advisor.knowledge.form import Form, Sources, Text, Word
from advisor.knowledge.schema import ClaimForm, Note, Number


class PriceForm(Form):
    """What a remedy costs: effort in rough steps, and what it does to the look."""

    effort: Annotated[int, Field(ge=0, le=9)]
    look: Annotated[int, Field(ge=0, le=9)]


class RemedyForm(Form):
    """A concrete change that may cure a conflict."""

    text: Text
    then: Text
    cures: Annotated[tuple[Word, ...], Field(min_length=1)]
    needs: dict[str, Any] = Field(default_factory=dict)
    change: dict[str, Any]
    price: PriceForm
    earlier: bool = False
    sources: Sources


class MachineForm(Form):
    """What a kind of machine can do."""

    name: Word
    claims: tuple[ClaimForm, ...] = ()
    stitches: tuple[Word, ...] = ()
    foot_lift: Number | None = Field(default=None, alias="foot lift")
    notes: tuple[Note, ...] = ()

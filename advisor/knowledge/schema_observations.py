"""The form of `observations.yaml`: what a maker sees or tries, and which fibres can answer so."""

from __future__ import annotations

from typing import Annotated, Literal

from pydantic import Field

from advisor.knowledge.form import Form, Sources, Text, Word

Kind = Literal["look", "feel", "water", "flame", "solvent"]


class AnswerForm(Form):
    """One answer with the fibres that can give it; without any it is only a hint."""

    also: tuple[Word, ...] = ()
    groups: tuple[Word, ...] = ()
    fibres: tuple[Word, ...] = ()
    vague: bool = False
    sources: Sources
    note: Text | None = None


class ObservationForm(Form):
    """A question about a cloth of unknown fibre, how to find out, and its answers."""

    title: Word
    ask: Text
    how: Text
    kind: Kind
    cost: Annotated[int, Field(ge=1, le=9)]
    after: Word | None = None
    answers: Annotated[dict[Word, AnswerForm], Field(min_length=1)]

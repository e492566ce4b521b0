"""The forms of `labels.yaml` (what a market asks) and `cleaning.yaml` (what a fibre bears)."""

from __future__ import annotations

from typing import Annotated

from pydantic import Field

from advisor.knowledge.form import Form, Sources, Text, Word
from advisor.knowledge.schema import ClaimForm, Note


class FibreNameForm(Form):
    """The name of a fibre on a label, or why there is none."""

    say: Word | None = None
    none: Text | None = None
    sources: Sources


class SmallForm(Form):
    """Amounts that are written together; some fibres are named however little there is."""

    below: Annotated[float, Field(gt=0, le=50)]
    one: Word
    more: Word
    named: tuple[Word, ...] = ()
    note: Text
    sources: Sources


class AnimalForm(Form):
    """Parts of animals that are no textile, and what has to be said of them."""

    phrase: Text
    fibres: tuple[Word, ...]
    may_be: tuple[Word, ...] = ()
    note: Text
    sources: Sources


class TrimForm(Form):
    """Parts that count as trimmings, by the name that a maker gives them."""

    words: Annotated[tuple[Word, ...], Field(min_length=1)]
    text: Text
    sources: Sources


class FlameForm(Form):
    """Which cloths are spared the flame test, and what to say of the others."""

    plain_from: Annotated[float, Field(gt=0, le=2000)]
    spared: tuple[Word, ...]
    text: Text
    sources: Sources


class CareWordsForm(Form):
    """The words of a market for every answer of a care aspect."""

    words: dict[Word, str]
    unknown: Text
    sources: Sources


class MarketForm(Form):
    """What one market asks of the label of a garment."""

    name: Word
    authority: Note
    closing: Text
    joint: str
    names: dict[Word, FibreNameForm]
    small_amounts: SmallForm | None = None
    whole: tuple[Note, ...]
    parts: tuple[Note, ...]
    pile: Note
    decoration: Note
    wool: Note | None = None
    not_counted: dict[Word, Note]
    fillings: tuple[Word, ...] = ()
    trims: TrimForm | None = None
    animal: AnimalForm
    unknown: tuple[Note, ...]
    care: dict[Word, CareWordsForm]
    no_steam: Text
    duties: Annotated[tuple[Note, ...], Field(min_length=1)]
    spared: tuple[Note, ...]
    basis: Note
    flammability: FlameForm | None = None
    children: Note


class CleaningForm(Form):
    """What a fibre is known to bear, where nothing else speaks of it."""

    bears: Annotated[tuple[ClaimForm, ...], Field(min_length=1)]

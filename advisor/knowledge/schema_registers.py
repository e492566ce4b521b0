"""The forms of the entries that stand many in a file: what a market asks of a label, what a fibre
bears, remedies, machines, observations, seam classes, tools, trade words.
"""

from __future__ import annotations

from typing import Annotated, Any, Literal, Self

from pydantic import Field, model_validator

from advisor.knowledge.form import Form, Sources, Text, Word
from advisor.knowledge.schema import ClaimForm, Note, Number


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
    adults: Note


class CleaningForm(Form):
    """What a fibre is known to bear, where nothing else speaks of it."""

    bears: Annotated[tuple[ClaimForm, ...], Field(min_length=1)]


class PriceForm(Form):
    """What a remedy costs: effort in rough steps, and what it does to the look."""

    effort: Annotated[int, Field(ge=0, le=9)]
    look: Annotated[int, Field(ge=0, le=9)]


class RemedyForm(Form):
    """A concrete change that may cure a conflict."""

    text: Text
    then: Text = ""
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
    kind: Literal["look", "feel", "water", "flame", "solvent"]
    cost: Annotated[int, Field(ge=1, le=9)]
    after: Word | None = None
    answers: Annotated[dict[Word, AnswerForm], Field(min_length=1)]


class SeamClassForm(Form):
    """A kind of seam in the words of ASTM D6193 and ISO 4916."""

    name: Text
    astm: str = ""
    astm_sources: Sources
    iso: str = ""
    iso_sources: Sources
    note: str = ""


class SubstituteForm(Form):
    """What does instead of a tool."""

    word: str = ""
    text: Text
    sources: Sources


class ToolForm(Form):
    """A tool that an answer calls for by its word, or whatever is told in some words."""

    aspect: Word | None = None
    word: Word | None = None
    name: Word
    instead: tuple[SubstituteForm, ...] = ()
    told_as: tuple[Word, ...] = ()
    """Beginnings of words, by which a step or a line of the sheet asks for it."""
    everyday: Literal["yes", "no"] = "no"
    """Whether it lies in any workroom, so that nobody has to buy it for this garment."""

    @model_validator(mode="after")
    def _asked_for(self) -> Self:
        """An answer asks for it, and something does instead; or a sentence does."""
        by_answer = self.aspect is not None and self.word is not None and bool(self.instead)
        if by_answer == bool(self.told_as):
            raise ValueError("needs `aspect`, `word` and `instead`, or `told as`, and not both")
        return self


class TermForm(Form):
    """A trade word in plain words."""

    means: Text
    also: tuple[Word, ...] = ()
    see: tuple[Word, ...] = ()
    sources: Sources

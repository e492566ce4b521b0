"""The forms of `places.yaml` (kinds of place) and of `methods/` (ways to make one).

A place is where something is made, and not every place is a seam. The kind says which aspects
are asked there at all, what is bought for it and how its plies pile up; a method says the stages
in which it is made. What a stage may ask of a place, of the machine and of the iron are closed
lists, because code answers each of them.
"""

from __future__ import annotations

from typing import Annotated, Any, Literal

from pydantic import Field, model_validator

from advisor.knowledge.form import Form, Id, Sources, Text, Word
from advisor.knowledge.orderfacts import Fact
from advisor.knowledge.schema_order import MachineWord, Minutes, YesNo

Family = Literal[
    "seam", "dart", "fold", "gathers", "edge", "casing", "band", "backing", "laid on",
    "fastening", "stay",
]  # fmt: skip
Group = Literal[
    "seam", "support", "allowance", "finish", "pins", "machine", "thread", "hem", "interfacing"
]  # fmt: skip
Unit = Literal["none", "piece", "pair", "length"]
Plies = Literal["joined", "band", "folded", "flat", "beside"]


class BuysForm(Form):
    """What a place adds to the shopping list, and how it is counted."""

    unit: Unit
    note: Text | None = None


class PlaceKindForm(Form):
    """What is made at a place."""

    name: Word
    family: Family
    leads: YesNo = "no"
    means: Text
    words: tuple[Word, ...] = ()
    notions: tuple[Word, ...] = ()
    applies: tuple[Group, ...]
    allowance: YesNo
    finish: YesNo
    buys: BuysForm
    plies: Plies
    prepares: tuple[Word, ...] = ()
    usual: Id
    sources: Sources


class StageForm(Form):
    """One stage of a method: a piece of work, and what is special about it here."""

    work: Word
    verb: Word | None = None
    does: Text | None = None
    does_by_hand: Text | None = None
    when: tuple[tuple[Fact, ...], ...] | None = None
    machine: MachineWord | None = None
    iron: Literal["none", "seam", "fuse"] | None = None
    minutes: Minutes | None = None
    undo: Literal["free", "easy", "hard", "never"] | None = None
    act: Word | None = None
    lies: Literal["flat", "open", "any"] = "any"
    closes: Text | None = None
    let_out: YesNo | None = None
    cuts_in: YesNo = "no"
    cuts_behind: YesNo = "no"


class FitsForm(Form):
    """Where the engine picks a method by itself: every key has to hold, one of its words each."""

    seam: tuple[Word, ...] = ()
    hem: tuple[Word, ...] = ()
    notions: tuple[Word, ...] = ()
    roles: tuple[Word, ...] = ()
    words: tuple[Word, ...] = ()
    gathers: tuple[Word, ...] = ()
    facts: tuple[Fact, ...] = ()
    beside: tuple[Literal["lining"], ...] = ()
    """What lies in the place beside its shell."""


class MethodExampleForm(Form):
    """A place as a project writes it, and the steps that its method gives, in order."""

    fabrics: Annotated[dict[Word, Word], Field(min_length=1)]
    place: dict[str, Any]
    steps: Annotated[tuple[Word, ...], Field(min_length=1)]
    picked: YesNo = "no"
    """Whether the engine picks the method here without being told."""


class ThingForm(Form):
    """Something that a method uses up: by the length of its place, by the piece, once, or laced."""

    name: Word = Field(alias="thing")
    unit: Literal["length", "full length", "piece", "row", "laced", "once"]
    ends: Annotated[float, Field(ge=0, le=1000)] = 0.0
    """What one length takes besides for its ends, mm; on the word of the method."""
    note: Text | None = None
    unless: tuple[Id, ...] = ()
    """Methods of other places by which the garment has the thing already."""
    tool: YesNo = "no"
    """Whether it is a tool, which is wanted whatever the place holds."""


class DepthForm(Form):
    """The least and the most of a hem, mm, and how that is told where not as it usually is."""

    min: Annotated[float, Field(gt=0, le=300)]
    max: Annotated[float, Field(gt=0, le=300)]
    told: Annotated[str, Field(pattern=r"\{depth\}")] = "{depth} deep"


class AllowedForm(DepthForm):
    """What is cut on for a hem."""

    told: Literal["{depth} allowed"] = "{depth} allowed"


class TurnForm(Form):
    """How deep a hem is turned, on a straight edge and on a curve, and how its cut edge ends.

    A hem that takes no more than some `allowed` mm is told by them, one that may be made deeper by
    what is `usual`, straight and curved, and in words only what is measured on no hem.
    """

    deep: Text = ""
    allowed: AllowedForm | None = None
    usual: DepthForm | None = None
    curved: DepthForm | None = None
    edge: Text
    times: int = 1

    @model_validator(mode="after")
    def told_once(self) -> TurnForm:
        """Its depth is said in words or in figures, never in both."""
        if [bool(self.deep), self.allowed is not None, self.usual is not None].count(True) != 1:
            raise ValueError(
                "say how deep it is turned: `usual` or `allowed` in mm, or `deep` in words"
            )
        return self


class MethodForm(Form):
    """A way to make a place."""

    id: Id
    name: Word
    also: tuple[Word, ...] = ()
    makes: Annotated[tuple[Word, ...], Field(min_length=1)]
    about: Text
    fits: FitsForm = FitsForm()
    stages: Annotated[tuple[StageForm, ...], Field(min_length=1, max_length=20)]
    crossed_by: tuple[Word, ...] = ()
    by_hand: Word | None = None
    sewn: YesNo = "yes"
    buys: tuple[ThingForm, ...] = ()
    allowance: Text | None = None
    says: Text | None = None
    turns: TurnForm | None = None
    limits: Text | None = None
    sources: Sources
    example: MethodExampleForm

"""The forms that the knowledge files have to fit.

One pydantic model a kind of entry, frozen and closed: a key that is not named here is refused.
Only reading and checking use these; everything that answers works on the light values of
`model`, so that a warm start never imports pydantic.
"""

from __future__ import annotations

from typing import Annotated, Any, ClassVar, Literal, Self

from pydantic import Field, model_validator

from advisor.knowledge.form import Form, Id, Sources, Text, Word

Degrees = Annotated[float, Field(ge=-50, le=2000)]

Strength = Literal["must", "should", "may"]
Risk = Literal["damage", "injury", "result"]
Purpose = Literal["hands", "machine", "cloth", "seam", "look", "habit"]
Structure = Literal["woven", "knit", "net", "nonwoven", "skin", "film", "composite"]
SourceKind = Literal[
    "standard",
    "regulation",
    "handbook",
    "extension",
    "trade-journal",
    "paper",
    "manual",
    "trade-page",
    "common-practice",
    "derived",
    "memory",
    "estimate",
    "own-test",
]
NotionKind = Literal[
    "fusible",
    "low-temperature fusible",
    "sew-in",
    "canvas",
    "zip",
    "elastic",
    "hook-and-loop",
    "tape",
    "button",
    "thread",
    "trim",
    "bone",
    "glue",
]
Family = Literal[
    "sheers",
    "silks",
    "satins",
    "brocades",
    "piles",
    "lace",
    "embellished",
    "knits",
    "wools",
    "linens",
    "cottons",
    "denims",
    "skins",
    "coated",
    "layered",
    "furs",
    "linings",
    "felts",
    "stretch",
    "pleated",
]
FibreGroup = Literal[
    "cellulose",
    "regenerated cellulose",
    "cellulose acetate",
    "protein",
    "polyester",
    "polyamide",
    "acrylic",
    "olefin",
    "elastomer",
    "chlorofibre",
    "metal",
    "mineral",
    "skin",
    "other",
]
CautionKind = Literal["burn", "eye", "fire", "cut", "damage", "health", "child"]


class SourceForm(Form):
    """A work that a value rests on, and where it can be opened.

    `where` is an address, DOI, ISBN, or the number of a standard or document; a work that has none
    says in `nowhere` why not. An invented place is worse than none.
    """

    title: Text
    by: Text | None = None
    year: Word | None = None
    where: Text | None = None
    nowhere: Text | None = None
    kind: SourceKind
    read: Literal["whole", "part", "abstract", "second-hand", "memory"] = "whole"
    note: Text | None = None
    also_cited_as: tuple[Word, ...] = Field(default=(), alias="also_cited_as")


class AspectForm(Form):
    """A question that the advisor answers, and the answers that it may have."""

    title: Word
    kind: Literal["range", "scale", "options"]
    scope: Annotated[tuple[Literal["fabric", "seam", "garment"], ...], Field(min_length=1)]
    unit: Word | None = None
    low: float | None = None
    high: float | None = None
    steps: tuple[float, ...] = ()
    prefer: Literal["low", "high", "middle", "limit"] = "middle"
    ties: Literal["low", "middle"] = "low"
    for_: dict[Literal["at most", "at least", "of", "not"], Purpose] = Field(
        default={}, alias="for"
    )
    usual: float | None = None
    asked_of: Literal["machine", "hand", "both"] = "both"
    milder: Literal["safe", "other"] = "other"
    chosen: Literal["one", "several"] = "one"
    usually: tuple[Word, ...] = ()
    usually_sources: tuple[Word, ...] = ()
    usually_why: Text | None = None
    words: tuple[Word, ...] = ()
    options: tuple[Word, ...] = ()
    labels: dict[Word, Text] = Field(default={})
    allows: dict[Word, tuple[Word, ...]] = Field(default={})
    lists: Literal["allowed", "excluded"] = "allowed"


class WordsForm(Form):
    """A closed list of words that an entry may say and a rule may test."""

    words: Annotated[tuple[Word, ...], Field(min_length=1)]
    means: Text


class TraitForm(Form):
    """Something that can be said of a cloth, on a short scale."""

    words: Annotated[tuple[Word, ...], Field(min_length=2)]
    means: Text


class ClaimForm(Form):
    """Somebody says that an aspect lies in a set."""

    aspect: Word
    min: float | Word | None = None
    max: float | Word | None = None
    of: tuple[Word, ...] | None = None
    not_: tuple[Word, ...] | None = Field(default=None, alias="not")
    best: float | Word | None = None
    strength: Strength = "should"
    risk: Risk | None = None
    for_: Purpose | None = Field(default=None, alias="for")
    on: Literal["first", "second"] | None = None
    why: Text | None = None
    sources: tuple[Word, ...] = ()


class Point(Form):
    """A published temperature, or a span of them."""

    at: Degrees | None = None
    from_: Degrees | None = Field(default=None, alias="from")
    to: Degrees | None = None
    sources: Sources
    note: str = ""


class CeilingForm(Form):
    """A published iron ceiling, °C of the sole plate."""

    max: Annotated[float, Field(ge=20, le=320)]
    sources: Sources
    note: str = ""


class Number(Form):
    """A published number or a span of them."""

    value: float | None = None
    min: float | None = None
    max: float | None = None
    sources: Sources
    note: str = ""


class Note(Form):
    """A fact worth printing."""

    text: Text
    sources: Sources


class FibreForm(Form):
    """A generic fibre."""

    name: Word
    also: tuple[Word, ...] = ()
    group: FibreGroup
    iron: tuple[CeilingForm, ...] = ()
    softens: tuple[Point, ...] = ()
    sticks: tuple[Point, ...] = ()
    melts: tuple[Point, ...] = ()
    scorches: tuple[Point, ...] = ()
    density: Number | None = None
    regain: tuple[Number, ...] = ()
    specific_heat: Number | None = None
    conductivity: Number | None = None
    traits: dict[Word, Word] = Field(default={})
    traits_sources: tuple[Word, ...] = ()
    claims: tuple[ClaimForm, ...] = ()
    notes: tuple[Note, ...] = ()


class SoldIn(Form):
    """The fibres that a cloth is sold in, commonest first; a mix is written with its shares."""

    fibres: Annotated[tuple[Word, ...], Field(min_length=1)]
    sources: Sources


class SpanForm(Form):
    """A range of a measure with its sources."""

    min: Annotated[float, Field(gt=0, le=5000)]
    max: Annotated[float, Field(gt=0, le=5000)]
    sources: Sources


class EntryForm(Form):
    """What a cloth and a notion have in common; one that says `like` may leave out what is lent."""

    needed: ClassVar[tuple[str, ...]] = ("structure",)

    id: Id
    name: Word
    also: tuple[Word, ...] = ()
    like: Id | None = None
    without: tuple[Word, ...] = ()
    structure: Structure | None = None
    weave: Word | None = None
    sold_in: SoldIn
    weight: SpanForm | None = None
    thickness: SpanForm | None = None
    traits: dict[Word, Word] = Field(default={})
    traits_sources: tuple[Word, ...] = ()
    claims: tuple[ClaimForm, ...] = ()
    limits: Text | None = None
    notes: tuple[Note, ...] = ()

    @model_validator(mode="after")
    def _whole_or_like(self) -> Self:
        """Whatever nobody lends has to be said."""
        lacking = [f"'{name}'" for name in self.needed if getattr(self, name) is None]
        if lacking and self.like is None:
            raise ValueError(f"missing key {' and '.join(lacking)}, or `like`")
        if self.without and self.like is None:
            raise ValueError("`without` needs a `like`: there is nothing to do without")
        return self


class FabricForm(EntryForm):
    """A cloth."""

    needed: ClassVar[tuple[str, ...]] = ("structure", "family")

    family: Family | None = None


ToldForm = Literal["always"] | dict[Word, Any]
"""Where a line is told; `telling` knows what may stand in it."""


class LineForm(Form):
    """A line of a rule that is told elsewhere than the rest of it."""

    text: Text
    told_where: ToldForm = Field(alias="told where")


class CautionForm(Form):
    """A warning that stands where someone or something can come to harm."""

    kind: CautionKind
    text: Text
    told_where: ToldForm | None = Field(default=None, alias="told where")
    sources: tuple[Word, ...] = ()


class Fires(Form):
    """A case in which a rule fires, and what then has to be true."""

    layers: tuple[Any, ...] = ()
    seam: dict[str, Any] = Field(default={})
    maker: dict[str, Any] = Field(default={})
    expect: dict[Word, Any] = Field(default={})
    conflict: Word | None = None
    cures: Id | None = None


class Quiet(Form):
    """A near miss: a case in which a rule must not fire."""

    layers: tuple[Any, ...] = ()
    seam: dict[str, Any] = Field(default={})
    maker: dict[str, Any] = Field(default={})


class Examples(Form):
    """The proof that a rule carries with it."""

    fires: Annotated[tuple[Fires, ...], Field(min_length=1)]
    quiet: Annotated[tuple[Quiet, ...], Field(min_length=1)]


class RuleForm(Form):
    """One rule."""

    id: Id
    claim: Text
    why: Text
    when: Annotated[dict[str, Any], Field(min_length=1)]
    then: tuple[ClaimForm, ...] = ()
    told_where: ToldForm | None = Field(default=None, alias="told where")
    do: tuple[Text | LineForm, ...] = ()
    cautions: tuple[CautionForm, ...] = ()
    tests: tuple[Text | LineForm, ...] = ()
    general: Text | None = None
    """What to keep in mind at any sewing, in one short sentence: told once, before the start."""
    limits: Text | None = None
    sources: Sources
    examples: Examples

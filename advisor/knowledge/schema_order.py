"""The form of `operations.yaml`: pieces of work, kinds of seam, precedences and change costs.

What a piece of work may ask of a garment (`when`), of the machine, of the iron, and how two
pieces of work may be related (`where`) are closed lists, because code answers each of them.
"""

from __future__ import annotations

from typing import Annotated, Literal

from pydantic import Field

from advisor.knowledge.form import Form, Sources, Text, Word
from advisor.knowledge.orderfacts import Fact
from advisor.knowledge.schema import Strength

YesNo = Literal["yes", "no"]
Tag = Literal[
    "flat",
    "closes",
    "fitted",
    "tried",
    "lining closes",
    "before lining",
    "before hem",
    "last",
    "tender face",
    "not tender face",
    "not fastening",
    "past recall",
    "cut into what is fitted",
    "may come before fitting",
    "basted to try on",
    "basted to look",
    "sleeve looked at",
    "pierced once across",
    "sleeve with a vent",
    "layers laid together",
    "shell or lining seam",
    "cut away behind",
    "hangs from nothing",
    "sheer",
    "joins what hangs apart",
    "may be sewn before hanging",
    "before last press",
    "after last press",
    "of the shell",
    "of the lining",
    "under a skirt",
    "over a petticoat",
    "lining of a new pattern",
    "not of the lining",
    "not a flap",
    "not of a band",
    "down a front",
    "not down a front",
    "not of a collar",
    "of a collar",
    "set at lapels",
    "not of a back",
    "not at a vent",
    "not hemmed apart",
    "left as it is cut",
    "set in the round",
    "at the zip",
    "shell to lining",
    "over pleats",
    "takes in the lining",
    "runs down to the hem",
    "opens the front",
    "foot of the body",
    "felled in the flat",
    "joined by the waist",
    "edge of straps",
    "closes over straps",
    "caught in an edge",
    "hangs inside",
    "takes in what hangs inside",
    "tried on with bones later",
    "caught in the waist",
    "ends in a waist",
    "runs over a fitted shoulder",
    "caught in a side",
    "takes in a collar",
    "bagged",
    "caught in a seam",
    "cut from a block",
    "not cut from a block",
    "in no seam yet",
    "goes through a hole",
    "hangs from it",
    "hangs from the band",
    "shuts in the lining",
    "frill",
    "loops caught in",
    "collar or its facing",
    "at the neck",
    "worked on the quilted",
    "made of the lining",
    "inner seam of a sleeve",
    "outer seam of a sleeve",
    "channel laid on",
    "on a pocket",
    "on what is finished",
    "buttons a pocket in a slit",
    "first of one run",
    "second of one run",
    "turns the whole",
    "front of one facing",
    "neck of one facing",
    "at the waist",
    "runs round a bag",
    "made up by itself",
    "at the wrist",
    "ends a tried sleeve",
    "not at the wrist",
    "round the waist",
    "fastens the band",
    "turned hem",
    "placed on the body",
    "laid on what drops",
    "takes in the whole lining",
    "covers a neck seam",
    "covered at the neck",
    "side of a band",
    "drawn up after it is tried on",
]
Where = Literal[
    "same seam",
    "same cloth",
    "crossed",
    "related",
    "fed",
    "held as one",
    "custom",
    "zip line",
    "below a zip",
    "tender",
    "free of the tender",
    "drawn up of it",
    "made for it",
    "made of it",
    "made upon it",
    "felled over it",
    "its band",
    "garment",
]
MachineWord = Literal[
    "none",
    "seam",
    "rows",
    "finish",
    "zip",
    "lock",
    "zigzag",
    "straight",
    "twin",
    "thick",
    "buttonhole",
    "facing",
]
Price = Annotated[float, Field(ge=0, le=600)]


class Minutes(Form):
    """How long a piece of work takes without changes of set-up; estimates."""

    each: Price
    per_metre: Price = 0.0


class OperationForm(Form):
    """A piece of work that a garment may need."""

    does: Text
    verb: Word
    scope: Literal["garment", "cloth", "seam"]
    rank: Annotated[int, Field(ge=-999, le=999)]
    when: tuple[tuple[Fact, ...], ...] = ()
    machine: MachineWord = "none"
    iron: Literal["none", "seam", "fuse", "cloth", "last"] = "none"
    minutes: Minutes
    undo: Literal["free", "easy", "hard", "never"]
    act: Word | None = None
    """What nothing undoes of it, in a word or two."""
    let_out: YesNo = "yes"
    together: tuple[Word, ...] = Field(default=(), alias="with")
    sources: Sources


class SeamKindForm(Form):
    """What a seam is in the garment, told by its name."""

    words: tuple[Word, ...] = ()
    stage: Annotated[int, Field(ge=150, le=949)]
    flat: YesNo = "no"
    closes: YesNo = "no"
    fitted: YesNo = "no"
    last: YesNo = "no"
    apart: YesNo = "no"
    pressed: Literal["open", "closed"] = "open"
    crosses: tuple[Word, ...] = ()
    sources: Sources


class PickForm(Form):
    """Which steps one side of a precedence speaks of."""

    op: Annotated[tuple[Word, ...], Field(min_length=1)]
    kind: tuple[Word, ...] = ()
    place: tuple[Word, ...] = ()
    tag: tuple[Tag, ...] = ()


class PrecedenceForm(Form):
    """Why some steps come before others."""

    before: PickForm
    after: PickForm
    where: Where
    why: Text
    strength: Strength = "must"
    sources: Sources


class ChangeForm(Form):
    """The minutes of one change of set-up."""

    minutes: Annotated[float, Field(ge=0, le=240)]
    sources: Sources


class OrderForm(Form):
    """The whole file."""

    operations: Annotated[dict[Word, OperationForm], Field(min_length=1)]
    kinds: Annotated[dict[Word, SeamKindForm], Field(min_length=1)]
    precedences: Annotated[dict[Word, PrecedenceForm], Field(min_length=1)]
    changes: dict[Word, ChangeForm]

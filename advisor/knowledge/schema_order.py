"""The form of `operations.yaml`: pieces of work, kinds of seam, precedences and change costs.

What a piece of work may ask of a garment (`when`), of the machine, of the iron, and how two
pieces of work may be related (`where`) are closed lists, because code answers each of them.
"""

from __future__ import annotations

from typing import Annotated, Literal

from pydantic import Field

from advisor.knowledge.form import Form, Sources, Text, Word
from advisor.knowledge.schema import Strength

YesNo = Literal["yes", "no"]
Fact = Literal[
    "shrinks first",
    "cloth",
    "one cut edge",
    "curved",
    "bias",
    "woven",
    "turned",
    "gathered",
    "pleated",
    "closed seam",
    "lockstitched",
    "no pile",
    "sewn-in interfacing",
    "fusible interfacing",
    "needs neatening",
    "pressed open",
    "fit is settled",
    "fit may change it",
    "sewn seam",
    "something to fit",
    "bias or knit drops",
    "bias basted",
    "reaches the floor",
    "ends in a band",
    "rows to be waxed",
    "no hem named",
    "wants heat before it meets a tender cloth",
    "held as one with another",
    "tried on",
    "pattern not tried",
    "lining loose at the zip",
    "free layer at the zip",
    "zip runs over it",
    "lining loose at the vent",
    "eased",
    "no enclosed seam asked for",
    "load on a backing",
    "very full",
    "coated throughout",
    "sheer",
    "topstitched",
    "more than one cloth",
    "loops for buttons",
    "lengths tried",
    "piping in it",
    "rows asked for",
    "set by its own seam",
    "sets a stand",
    "collar above it",
    "no collar above it",
    "buttoned through",
    "band cut by itself",
    "sleeve set flat",
    "sleeve set in the round",
    "run round with its seam",
    "not run round with its seam",
    "backed here",
    "canvas behind it",
    "edge stays as cut",
    "lace on an edge",
    "lace over its mount",
    "stays an edge",
    "rouleau",
    "no rouleau",
    "lace laid over seams",
    "lace on a finished edge",
    "tucks of no piece",
    "ribbon faces the waist",
    "free facing edge",
    "of a lining",
    "takes in a lining",
    "lining bound in",
    "opening of its own",
    "bag apart",
    "bag not apart",
    "free facing edge",
    "no machine buttonhole",
    "no button named",
    "buttons for show",
    "loop of its own",
    "knit band stretched on",
    "tender face",
    "wool eased in",
    "no eyelets named",
    "cord may be drawn in",
    "cord ruled out",
    "worn by a child",
    "not worn by a child",
    "cord in a casing",
    "steam held above",
    "topstitching suits",
    "closed round",
    "ends taken in",
    "ends of a sash",
    "a seam takes it in",
    "ends free",
    "holes in it",
    "sewn straight",
    "open in front",
    "ends in a zip",
    "band in pieces",
    "hangs from the shoulder",
    "gap closed here",
    "turned through here",
    "flap named",
    "flap over it",
    "laid piece stays as cut",
    "laid piece frays",
    "pocket lined",
    "round cuff",
    "collar made nowhere",
    "strap of cloth",
    "no second row all round",
    "channel in a band of its own",
    "band faced",
    "band with a curtain",
    "stiffened by a strip",
    "band cut in halves",
    "line may give",
    "seat under strain",
    "rows laid on one face",
    "band of one layer that stays as cut",
    "lapel",
    "no lapel",
    "no piping in it",
    "tape in it",
    "lining faces the edge",
    "catches the lining",
    "pleated before it is cut",
    "felled over a seam",
    "lining ends at the waist",
    "lining swings free",
    "felled at the waist",
    "takes a nail",
    "slit to be stayed",
    "band with ends",
    "opens end to end",
    "cinches the body",
    "stay advised",
    "opening yields",
    "deep pile in it",
    "collar caught in it",
    "wadding in it",
    "loose wadding in it",
    "bald seam",
    "pleats above it",
    "taken in to the waist",
    "hemmed before its pleats",
    "hairs caught in it",
    "waistband beside",
    "tape at a waist edge",
    "loops of ribbon",
    "hangs from the waist",
    "edge of its own",
    "slit of its own",
    "slit that is faced",
    "lines a cut slit",
    "border along an edge",
    "caught in the armhole",
    "carries the garment",
    "thick",
    "waist edge",
    "seam below among others",
    "a side left open",
    "allowance is cut down",
    "allowance is kept",
    "band is a ribbon",
    "cord to be covered",
    "lined by another place",
    "ring not told",
    "lining sewn by hand",
    "open inner edge",
    "covers what is sewn",
    "edge of the zip open",
    "elastic lies on a seam",
    "top of the pocket open",
    "top of the pocket finished",
]
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
    "lining of a new pattern",
    "not of the lining",
    "not a flap",
    "not of a band",
    "down a front",
    "not down a front",
    "not of a collar",
    "not of a back",
    "not at a vent",
    "not hemmed apart",
    "left as it is cut",
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
    "first of one run",
    "second of one run",
    "at the waist",
    "runs round a bag",
    "made up by itself",
    "at the wrist",
    "not at the wrist",
    "round the waist",
    "turned hem",
    "placed on the body",
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

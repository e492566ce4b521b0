"""The form of `gaps.yaml`: what a garment file may have forgotten, and the line that says it."""

from __future__ import annotations

from typing import Literal

from pydantic import Field

from advisor.knowledge.form import Form, Sources, Text, Word
from advisor.knowledge.schema_order import YesNo

Which = Literal["shell", "lining", "both"]
Known = Literal[
    "woven", "close", "overlong", "narrower than a head", "closing buttons",
    "no hole", "no hole of any", "bears a hole", "tears at a hole", "holes of other buttons",
    "closed end", "not elastic", "frays", "rain comes in",
    "sleeved",
    "ends nowhere",
    "hangs from a band",
    "hangs from nothing",
    "worn apart",
    "frill ends as it is cut",
    "pile with nothing inside",
    "lining in pieces", "open below",
    "stops at a yoke",
    "shoulders of its own",
    "joined to nothing",
    "opens above alone",
    "ends raw below",
    "closes nowhere",
    "no bone anywhere",
    "nothing for a bag",
    "raw end in no seam",
    "a layer opens nowhere",
    "ring not closed",
    "wadding bare",
    "worn by a child",
    "halves not joined",
    "panels not joined",
    "skirt lining unsewn",
    "sleeve ends nowhere",
    "mounted nowhere",
    "ribbon band",
    "band of cloth",
]  # fmt: skip
"""What code answers of the place that calls for another."""


class SignForm(Form):
    """Places of which some are meant: all keys hold, one of the words of each."""

    roles: tuple[Word, ...] = ()
    kinds: tuple[Word, ...] = ()
    families: tuple[Word, ...] = ()
    words: tuple[Word, ...] = ()
    without: tuple[Word, ...] = ()
    of: Which | None = None
    same_part: YesNo = "no"


class WantedForm(Form):
    """The place to write; of its layers `cloth` stands for the cloth, any other is a notion."""

    name: Word
    layers: tuple[Word, ...] = Field(min_length=1)
    kind: Word | None = None
    edge: Word | None = None
    times: int | None = None


class GapForm(Form):
    """A place that calls for another, what would fill it, and what is told where nothing does."""

    each_part: YesNo = "no"
    at: SignForm
    beside: tuple[SignForm, ...] = ()
    facts: tuple[Known, ...] = ()
    filled: tuple[SignForm, ...] = Field(min_length=1)
    says: Text
    write: WantedForm | None = None
    sources: Sources

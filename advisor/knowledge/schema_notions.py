"""The form of a notion: what is sewn in and is no cloth, how it is sold, how wide, how apart."""

from __future__ import annotations

from typing import Annotated, ClassVar, Literal

from pydantic import Field

from advisor.knowledge.form import Form, Sources, Word
from advisor.knowledge.schema import Degrees, EntryForm, NotionKind


class Fusing(Form):
    """What the glue of a fusible needs at the glue line."""

    min: Degrees
    max: Degrees
    seconds: float
    moisture: Literal["dry", "damp cloth", "steam"]
    sources: Sources


class EndsForm(Form):
    """What a length is bought and cut longer for its ends, mm: turned, lapped, knotted, caught.

    `on a child` is all that may hang out of a child's garment.
    """

    mm: Annotated[float, Field(ge=0, le=1000)]
    on_a_child: Annotated[float, Field(ge=0, le=1000)] | None = None
    sources: Sources


class WideForm(Form):
    """How wide a notion is usually bought, mm; none where its width is a matter of looks.

    `at` are other widths at places whose names hold some words; `round` is said of a cord, whose
    thickness it is.
    """

    mm: Annotated[float, Field(gt=0, le=200)] | None = None
    at: dict[Word, float] = Field(default_factory=dict)
    round: bool = False
    sources: Sources


class LessForm(Form):
    """How much shorter than the body an elastic is cut, mm; `at` places whose names hold words."""

    mm: Annotated[float, Field(gt=0, le=200)] | None = None
    at: dict[Word, float] = Field(default_factory=dict)
    sources: Sources


class ApartForm(Form):
    """How far apart the fastenings of a row usually are, mm."""

    mm: Annotated[float, Field(gt=0, le=200)]
    sources: Sources


class NotionForm(EntryForm):
    """A notion: what is sewn in and is not cloth."""

    needed: ClassVar[tuple[str, ...]] = ("structure", "kind")

    kind: NotionKind | None = None
    sold_by: Literal["piece", "length", "sheet"] | None = None
    """Where it is bought otherwise than notions of its kind are."""
    ends: EndsForm | None = None
    wide: WideForm | None = None
    less: LessForm | None = None
    apart: ApartForm | None = None
    fuses_at: Fusing | None = None

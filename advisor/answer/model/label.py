"""What is told of the label of a sold garment; `line` is always what stands on the label."""

from __future__ import annotations

from dataclasses import dataclass


@dataclass(frozen=True, slots=True)
class ToldDuty:
    """A sentence about labels, with its source."""

    text: str
    sources: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class ToldLack:
    """Something that stands in the way of the label, and what finding out takes."""

    cloths: tuple[str, ...]
    kind: str
    text: str
    find: str
    alternatives: tuple[ToldDuty, ...]
    sources: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class ToldEntry:
    """One fibre of a line of content."""

    name: str
    percent: float | None
    fibres: tuple[str, ...]
    others: bool


@dataclass(frozen=True, slots=True)
class ToldContent:
    """The content of one part, in the words of the market."""

    cloths: tuple[str, ...]
    line: str
    entries: tuple[ToldEntry, ...]
    may_be_left_out: ToldDuty | None
    sources: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class ToldWhole:
    """The content of the whole garment by mass, where it may stand for the parts."""

    line: str
    parts: dict[str, float]
    text: str
    sources: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class ToldLeft:
    """Parts that a label does not count."""

    cloths: tuple[str, ...]
    text: str
    sources: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class ToldAnimal:
    """Parts of animals that have to be named."""

    cloths: tuple[str, ...]
    may_be: tuple[str, ...]
    line: str
    text: str
    sources: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class ToldSetter:
    """Who sets a line of care, and why."""

    who: str
    why: str
    strength: str
    certain: bool
    sources: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class ToldCare:
    """One line of care; no line where nothing suits all parts."""

    aspect: str
    answer: str | None
    line: str | None
    known: bool
    set_by: tuple[ToldSetter, ...]
    silent: tuple[str, ...]
    sources: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class ToldApart:
    """The care of a part that comes off, and whether anything cleans it."""

    cloth: str
    lines: tuple[ToldCare, ...]
    cleaning: str = "some"


@dataclass(frozen=True, slots=True)
class ToldCaring:
    """The care of the whole, of what comes off, and what clashes in it."""

    lines: tuple[ToldCare, ...]
    apart: tuple[ToldApart, ...]
    cleaning: str
    conflicts: tuple[str, ...]
    once_known: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True)
class ToldLabel:
    """The label for one market."""

    market: str
    market_name: str
    market_asked: bool
    ready: bool
    missing: tuple[ToldLack, ...]
    content: tuple[ToldContent, ...]
    left_out: tuple[ToldLeft, ...]
    animal: ToldAnimal | None
    rules: tuple[ToldDuty, ...]
    care: ToldCaring
    duties: tuple[ToldDuty, ...]
    spared: tuple[ToldDuty, ...]
    basis: ToldDuty
    flammability: ToldLeft | None
    children: ToldDuty
    authority: ToldDuty
    closing: str
    whole: ToldWhole | None = None

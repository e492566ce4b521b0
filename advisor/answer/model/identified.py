"""What is told of a cloth of unknown fibre (`advisor.identify/1`)."""

from __future__ import annotations

from dataclasses import dataclass, field

from advisor.answer.model.told import ToldSource
from advisor.records import UNWRITTEN
from advisor.units import System


@dataclass(frozen=True, slots=True)
class ToldSeen:
    """What was seen; a hint is no proof."""

    test: str
    title: str
    answer: str
    note: str
    hint: bool


@dataclass(frozen=True, slots=True)
class ToldFibre:
    """A fibre that fits all that was seen."""

    id: str
    name: str
    group: str


@dataclass(frozen=True, slots=True)
class ToldRuledOut:
    """A fibre that does not fit, by what was seen; `memory_only` where no source says so."""

    fibre: str
    by: tuple[str, ...]
    memory_only: bool
    name: str = field(metadata=UNWRITTEN)


@dataclass(frozen=True, slots=True)
class ToldOutcome:
    """Answers of a test that leave the same fibres."""

    answers: tuple[str, ...]
    remain: tuple[str, ...]
    names: tuple[str, ...] = field(metadata=UNWRITTEN)


@dataclass(frozen=True, slots=True)
class ToldTrial:
    """A test worth doing, and how many fibres it leaves at most."""

    test: str
    title: str
    kind: str
    ask: str
    how: str
    at_most: int
    outcomes: tuple[ToldOutcome, ...]


@dataclass(frozen=True, slots=True)
class ToldFinding:
    """The whole cloth, its warp or its weft: what remains, why, and what would tell more.

    `mix` is the blend in words; `first` is what to ask before any test.
    """

    name: str
    saw: tuple[ToldSeen, ...]
    remain: tuple[ToldFibre, ...]
    blend: dict[str, float | None]
    ruled_out: tuple[ToldRuledOut, ...]
    contradiction: tuple[ToldSeen, ...]
    blends: tuple[str, ...]
    next: ToldTrial | None
    gentler: ToldTrial | None
    sources: tuple[str, ...]
    mix: str = field(metadata=UNWRITTEN)
    first: str = field(metadata=UNWRITTEN)


@dataclass(frozen=True, slots=True)
class ToldSafety:
    """How to do what can hurt."""

    kind: str
    text: str
    sources: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class Identified:
    """Everything found out about a cloth, for each of its threads that was looked at apart."""

    schema: str
    units: System
    threads: tuple[ToldFinding, ...]
    may_be: tuple[dict[str, float | None], ...]
    contradicted: bool
    iron_limit_c: float | None
    cautions: tuple[ToldSafety, ...]
    sources: tuple[ToldSource, ...]

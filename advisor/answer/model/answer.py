"""One answer to one garment. Every command, the page and `--json` print it, each its own parts."""

from __future__ import annotations

from dataclasses import dataclass, field
from typing import TYPE_CHECKING

from advisor.answer.model.plan import ToldIronSetting
from advisor.answer.model.told import (
    ToldCaution,
    ToldConflict,
    ToldCureAll,
    ToldGap,
    ToldInstruction,
    ToldLayer,
    ToldPlace,
    ToldSource,
    ToldTask,
    ToldTest,
    ToldUnknown,
    ToldVerdict,
)
from advisor.errors import Exit
from advisor.records import FLATTENED, OPTIONAL, UNWRITTEN
from advisor.units import System

if TYPE_CHECKING:  # a question has none of them, and is answered sooner without
    from advisor.answer.model.heat import ToldHeat, ToldIron
    from advisor.answer.model.label import ToldLabel
    from advisor.answer.model.making import (
        ToldCheck,
        ToldCloth,
        ToldCut,
        ToldPart,
        ToldThread,
        ToldWeight,
    )
    from advisor.answer.model.needed import ToldNeed
    from advisor.answer.model.order import ToldOrder
    from advisor.answer.model.quote import ToldQuote

SCHEMA = "advisor.answer/1"


@dataclass(frozen=True, slots=True)
class Answer:
    """Everything that is told of a garment; parts that were not asked for are None.

    Temperatures are °C, lengths mm, weights g/m², whatever the maker's units; only `text`,
    `message` and other sentences follow her units.
    """

    schema: str
    garment: str
    units: System
    layers: tuple[ToldLayer, ...]
    seams: tuple[ToldPlace, ...]
    verdicts: tuple[ToldVerdict, ...]
    irons: tuple[ToldIronSetting, ...]
    conflicts: tuple[ToldConflict, ...]
    cure_all: ToldCureAll | None
    instructions: tuple[ToldInstruction, ...]
    cautions: tuple[ToldCaution, ...]
    advice: tuple[ToldTask, ...]
    tests: tuple[ToldTest, ...]
    unknowns: tuple[ToldUnknown, ...]
    sources: tuple[ToldSource, ...]
    parts: tuple[ToldPart, ...] | None = field(default=None, metadata=OPTIONAL)
    checks: tuple[ToldCheck, ...] | None = field(default=None, metadata=OPTIONAL)
    missing: tuple[ToldGap, ...] | None = field(default=None, metadata=OPTIONAL)
    cloth: tuple[ToldCloth, ...] | None = field(default=None, metadata=OPTIONAL)
    cut: tuple[ToldCut, ...] | None = field(default=None, metadata=OPTIONAL)
    thread: tuple[ToldThread, ...] | None = field(default=None, metadata=OPTIONAL)
    weight: ToldWeight | None = field(default=None, metadata=OPTIONAL)
    bulk: str | None = field(default=None, metadata=OPTIONAL)
    kit: tuple[ToldNeed, ...] | None = field(default=None, metadata=OPTIONAL)
    heat: tuple[ToldHeat, ...] | None = field(default=None, metadata=OPTIONAL)
    iron: tuple[ToldIron, ...] | None = field(default=None, metadata=OPTIONAL)
    work: ToldOrder | None = field(default=None, metadata=FLATTENED)
    label: ToldLabel | None = field(default=None, metadata=OPTIONAL)
    quote: ToldQuote | None = field(default=None, metadata=OPTIONAL)
    taken: tuple[str, ...] | None = field(default=None, metadata=OPTIONAL)
    file: str = field(default="FILE", metadata=UNWRITTEN)

    @property
    def code(self) -> Exit:
        """The exit code of every command that was asked about this garment."""
        return Exit.CONFLICT if self.conflicts else Exit.CLEAR

"""What was said of a garment, what came of it, and how each clash of it can be cured."""

from __future__ import annotations

from dataclasses import dataclass, field

from advisor.claims.collect import Gathered, Place
from advisor.claims.combine import Verdict
from advisor.claims.conflicts import Conflict
from advisor.project.garment import Garment


@dataclass(frozen=True, slots=True)
class Judgement:
    """What was said of a garment, what came of it, and where it clashes."""

    garment: Garment
    gathered: Gathered
    verdicts: dict[Place, dict[str, Verdict]]
    conflicts: tuple[Conflict, ...]


@dataclass(frozen=True, slots=True)
class Cure:
    """A remedy that was applied and re-run: its conflict is gone and none is new."""

    remedy: str
    words: dict[str, str]
    after: Judgement
    effort: int
    look: int


@dataclass(frozen=True, slots=True)
class Advice:
    """A judgement with the cures of each of its conflicts, cheapest first."""

    judgement: Judgement
    cures: dict[tuple[str, str], tuple[Cure, ...]] = field(default_factory=dict)

"""What was said of a garment, what came of it, and how each clash of it can be cured."""

from __future__ import annotations

from msgspec import Struct, field

from advisor.claims.collect import Gathered, Place
from advisor.claims.combine import Verdict
from advisor.claims.conflicts import Conflict, Spot
from advisor.claims.speakers import Said
from advisor.claims.workarounds import Instruction
from advisor.project.garment import Garment
from advisor.project.lines import Line


class Shade(Struct, frozen=True):
    """The colour that a cloth is sewn in where it shares its thread with another.

    `colour` is what the thread matches, or the name of her `reel`; `difference` is by CIEDE2000.
    """

    colour: str
    reel: bool
    difference: float
    darker: bool


class Judgement(Struct, frozen=True):
    """What was said of a garment, what came of it, where it clashes, and how clashes are avoided.

    The conflicts stand in the order in which they are numbered, one for each cause. `shades` are
    the colours of thread that cloths share, by cloth. `decided` holds what was heard of each aspect
    and what came of it alone, before the answers of a place are brought into line.
    """

    garment: Garment
    gathered: Gathered
    verdicts: dict[Place, dict[str, Verdict]]
    conflicts: tuple[Conflict, ...]
    instructions: tuple[Instruction, ...] = ()
    shades: dict[str, Shade] = field(default_factory=dict)
    decided: dict[Place, dict[str, tuple[list[Said], frozenset[str], Verdict]]] = field(
        default_factory=dict
    )

    @property
    def clashes(self) -> dict[Spot, Conflict]:
        """The conflict of every place and aspect that clashes."""
        return {spot: conflict for conflict in self.conflicts for spot in conflict.spots}


class Cure(Struct, frozen=True):
    """A remedy that was applied and re-run: its conflict is gone and none is new.

    `lines` are what a project says it in.
    """

    remedy: str
    words: dict[str, str]
    after: Judgement
    effort: int
    look: int
    lines: tuple[Line, ...] = ()

    @property
    def cost(self) -> int:
        """What it costs: a worse look counts double."""
        return self.effort + 2 * self.look


class Advice(Struct, frozen=True):
    """A judgement with the cures of each of its conflicts, cheapest first."""

    judgement: Judgement
    cures: dict[tuple[str, str], tuple[Cure, ...]] = field(default_factory=dict)

"""How much a seam holds, against what its place asks of it.

Both by `craft.strength`: a published rule of thumb for lockstitch and two-thread chainstitch in
superimposed woven seams, and our own estimates of what a place needs. A thread or stitch that
no strength is published for is said to be unknown, never taken for strong.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import Final

from advisor.claims.subjects import subject_of
from advisor.construction.bulk import Verdicts, number, picked
from advisor.craft import strength
from advisor.knowledge.model import Knowledge
from advisor.project.garment import Garment, Seam

THREADS: Final = {"polyester": "spun polyester", "core-spun polyester": "core-spun polyester"}
_STRESS: Final = {
    "low": strength.Stress.LOW,
    "medium": strength.Stress.NORMAL,
    "high": strength.Stress.HIGH,
}
SHORTEST: Final = 1.5
"""A stitch shorter than this cuts cloth more than it holds it, mm (estimate)."""
SLIP: Final = "slips at seams"


@dataclass(frozen=True, slots=True)
class Holding:
    """Strength of a seam and what its place needs, N/cm; `why_not` where it is not known."""

    has: float | None
    needs: float
    enough: bool | None
    why_not: str = ""
    shorten_to: float | None = None
    rows: int = 1
    slips: tuple[str, ...] = ()
    sources: tuple[str, ...] = (*strength.SOURCES, *strength.NEED_SOURCES)


def holding_of(
    seam: Seam, garment: Garment, verdicts: Verdicts, knowledge: Knowledge, rows: int
) -> Holding:
    """A seam's strength against its place; the second of two rows carries as well as the first."""
    stress = _STRESS.get(str(seam.facts.get("stress", "medium")), strength.Stress.NORMAL)
    needs = strength.needed(stress, moves=seam.making.moves)
    slips = tuple(
        name
        for name in seam.cloths()
        if subject_of(garment.cloths[name], None, knowledge).levels.get(SLIP, (0, 0))[1] > 0
    )
    thread, stitch = picked(verdicts, "thread.fibre"), picked(verdicts, "stitch.type")
    tex, length = number(verdicts, "thread.size"), number(verdicts, "stitch.length")
    if seam.by_hand or stitch == "hand":
        why = "sewn by hand"
    elif thread not in THREADS:
        why = f"no strength is published for thread of {thread or 'unknown fibre'}"
    elif stitch not in ("301", "401"):
        why = f"no strength is published for stitch {stitch or 'unknown'}"
    elif tex is None or length is None:
        why = "thread size or stitch length is not decided"
    else:
        one = strength.seam_strength(
            length, strength.thread_strength(tex, THREADS[thread]), stitch=int(stitch)
        )
        return _measured(one.n_per_cm * rows, needs, length, rows, slips)
    return Holding(None, needs, None, why, slips=slips)


def _measured(
    has: float, needs: float, length: float, rows: int, slips: tuple[str, ...]
) -> Holding:
    """Whether a strength is enough, and the stitch that would make it so."""
    if has >= needs:
        return Holding(has, needs, True, rows=rows, slips=slips)
    wanted = length * has / needs
    shorten = wanted if wanted >= SHORTEST else None
    return Holding(has, needs, False, shorten_to=shorten, rows=rows, slips=slips)

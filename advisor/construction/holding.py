"""How much a seam holds, against what its place asks of it.

Both by `craft.strength`: a published rule of thumb for lockstitch and two-thread chainstitch in
superimposed woven seams, and our own estimates of what a place needs. Nothing holds more than the
weaker of the two sides that are joined. A thread or stitch that no strength is published for is
said to be unknown, never taken for strong.
"""

from __future__ import annotations

import math
from typing import Final

from msgspec import Struct
from msgspec.structs import replace

from advisor.claims.subjects import subject_of
from advisor.claims.valuesets import Span
from advisor.construction.bulk import Verdicts, number, picked
from advisor.construction.canvassed import stayed_by_backing
from advisor.construction.leftraw import keeps_holes
from advisor.craft import strength
from advisor.knowledge.model import Knowledge
from advisor.project.garment import Cloth, Garment, Seam

THREADS: Final = {"polyester": "spun polyester", "core-spun polyester": "core-spun polyester"}
_STRESS: Final = {
    "low": strength.Stress.LOW,
    "medium": strength.Stress.NORMAL,
    "high": strength.Stress.HIGH,
}
SHORTEST: Final = 1.5
"""A stitch shorter than this cuts cloth more than it holds it, mm (estimate)."""
STRONGER: Final = 1.1
"""How much thicker a thread is at least that is worth a change (estimate)."""
STAYS: Final = frozenset({"petersham", "grosgrain-ribbon", "stay-tape", "webbing"})
"""Woven tapes that carry a seam where its cloth would give; how much, nobody has published."""
THREADED: Final = ("woven", "knit", "net")
"""Structures whose threads carry the pull; of films, skins and felts nothing is told."""
SLIP: Final = "slips at seams"
TIES: Final = "ties"


class Holding(Struct, frozen=True):
    """Strength of a seam and what its place needs, N/cm; `why_not` where it is not known.

    `by_cloth` where the cloth gives way before the thread does; `thicker` whether the layers take
    a thicker thread than the one that is advised.
    """

    has: float | None
    needs: float
    enough: bool | None
    why_not: str = ""
    shorten_to: float | None = None
    rows: int = 1
    slips: tuple[str, ...] = ()
    by_cloth: bool = False
    thicker: bool = True
    sources: tuple[str, ...] = (*strength.SOURCES, *strength.NEED_SOURCES)


def holding_of(
    seam: Seam, garment: Garment, verdicts: Verdicts, knowledge: Knowledge, rows: int
) -> Holding:
    """A seam's strength against its place; `rows` that share the pull carry alike."""
    stress = _STRESS.get(str(seam.facts.get("stress", "medium")), strength.Stress.NORMAL)
    needs = strength.needed(stress, moves=seam.making.moves)
    entries = {name: knowledge.entries[cloth.entry] for name, cloth in garment.cloths.items()}
    held = stayed_by_backing(seam, garment, entries)
    slips = tuple(
        name
        for name in seam.cloths()
        if subject_of(garment.cloths[name], None, knowledge).levels.get(SLIP, (0, 0))[1] > 0
        and not held
    )
    thread, stitch = picked(verdicts, "thread.fibre"), picked(verdicts, "stitch.type")
    tex, length = number(verdicts, "thread.size"), number(verdicts, "stitch.length")
    kind = knowledge.places.kinds.get(seam.place)
    if kind is not None and ("stitch.type" in kind.drops or kind.id == TIES):
        why = ""  # no seam, as a button, or one along the pull of a strap: nothing opens its line
    elif seam.by_hand or stitch == "hand":
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
        most = weaker_side(seam, garment, knowledge)
        found = _measured(one.n_per_cm * rows, needs, length, rows, slips, most)
        stay = next((n for n in seam.cloths() if garment.cloths[n].entry in STAYS), "")
        if found.by_cloth and not found.enough and stay:
            return Holding(None, needs, None, f"the {stay} in it takes the pull", slips=slips)
        shorter, thickest = found.shorten_to, _advised(verdicts, "thread.size")
        torn = any(keeps_holes(knowledge.entries[garment.cloths[n].entry]) for n in seam.cloths())
        if shorter is not None and (torn or shorter < _advised(verdicts, "stitch.length")[0]):
            shorter = None  # a line to tear along
        return replace(found, shorten_to=shorter, thicker=thickest[1] >= tex * STRONGER)
    return Holding(None, needs, None, why, slips=slips if why else ())


def weaker_side(seam: Seam, garment: Garment, knowledge: Knowledge) -> float | None:
    """The very most that the cloth of a seam holds, N/cm; None where nobody can say.

    The first half of the layers is pulled from the other half; a cloth laid in counts with its
    side, a notion does not.
    """
    held = [
        limit_of(garment.cloths[use.cloth], knowledge)
        for use in seam.uses
        if knowledge.entries[garment.cloths[use.cloth].entry].kind == "cloth"
    ]
    half = max(1, len(held) // 2)
    sides = [held[:half], held[-half:]] if held else []
    sums = [sum(v for v in side if v is not None) for side in sides if None not in side]
    return min(sums, default=None)


def _advised(verdicts: Verdicts, aspect: str) -> tuple[float, float]:
    """From what to what every layer is well served by, as the sheet tells it."""
    verdict = verdicts.get(aspect)
    span = None if verdict is None else verdict.advised
    return (
        (span.low, span.high) if isinstance(span, Span) and not span.is_empty else (0.0, math.inf)
    )


def limit_of(cloth: Cloth, knowledge: Knowledge) -> float | None:
    """The most that one ply of a cloth holds, N/cm, for the weakest mix that it may be."""
    if cloth.weight is None or knowledge.entries[cloth.entry].structure not in THREADED:
        return None
    shared = ({f: 1.0 if share is None else share for f, share in mix} for mix in cloth.mixes)
    found = [strength.fibre_tenacity(mix) for mix in shared]
    known = [tenacity for tenacity in found if tenacity is not None]
    if not known:
        return None
    return strength.cloth_limit(sum(cloth.weight) / 2, min(known))


def _measured(
    thread: float,
    needs: float,
    length: float,
    rows: int,
    slips: tuple[str, ...],
    most: float | None,
) -> Holding:
    """Whether a strength is enough, and the stitch that would make it so, if one would."""
    by_cloth = most is not None and most < thread
    has = min(thread, most) if most is not None else thread
    sources = (*strength.SOURCES, *strength.NEED_SOURCES)
    if by_cloth:
        sources = (*strength.FIBRE_SOURCES, *sources)
    wanted = length * thread / needs
    mends = has < needs and not by_cloth and wanted >= SHORTEST and (most is None or most >= needs)
    return Holding(
        has,
        needs,
        has >= needs,
        shorten_to=wanted if mends else None,
        rows=rows,
        slips=slips,
        by_cloth=by_cloth,
        sources=tuple(dict.fromkeys(sources)),
    )

"""A seam whose load its backing carries: of a bodice that is laced, boned, or pulled hard.

What lies outside is then only its face, and the thread that holds is the backing's.
"""

from __future__ import annotations

from collections import Counter
from typing import Final

from advisor.claims.lies_behind import ends_above, may_lie
from advisor.knowledge.model import Knowledge
from advisor.knowledge.places import PLAIN
from advisor.project.garment import Garment, Seam
from advisor.project.placing import singular_words

MOUNTED: Final = "underlining"
JOINS: Final = frozenset({"seam", "boned-seam", "gathered-edge"})
"""Kinds of place that hold pieces of a bodice together."""
EDGES: Final = frozenset({"bound-edge", "faced-edge"})
"""Kinds of place at the edge of a bodice, where the needle goes through all its layers."""
LOADS: Final = frozenset({"bone", "busk", "grommet", "lacing-cord"})
"""Notions, by id or sort, that a bodice is drawn tight or held out with."""
FIRM_FROM: Final = {"woven": 120.0, "net": 50.0}
"""From this weight on a backing carries the load, by its structure, g/m²: estimate."""
THREAD: Final = "thread.fibre"
NEEDLE: Final = "needle.size"
SLEEVE: Final = "sleeve"
BAND: Final = "waistband"
HOLDS: Final = (THREAD, "thread.size", NEEDLE, "stitch.length")
"""What makes a seam hold; a net is too fine to ask for more than a firm thread."""


OFTEN: Final = 2
"""In so many seams two cloths lie doubled before they are taken for mounted ones (estimate)."""
DOUBLED, PARTS = 4, 2
TIES: Final = "ties"
"""What is made up by itself of one cloth, so that nothing of the body lies in it."""
HELD: Final = frozenset({"underlining", "quilting"})
"""Kinds of place that hold two cloths as one."""


def mounts_near(seam: Seam, garment: Garment) -> list[tuple[str, ...]]:
    """The layers of every mounted piece, face first, that may lie at a place.

    One of another part does not, but where the place joins a cloth that its own part lacks.
    """
    own = next((set(part.layers) for part in garment.parts if part.name == seam.part), set())
    joins = seam.place in JOINS and not set(seam.cloths()) <= own
    mounts = [s for s in garment.seams if s.place == MOUNTED and may_lie(s, seam, garment)]
    if BAND in singular_words(seam.name):  # a band is a piece by itself, its support fused to it
        mounts = [s for s in mounts if not ends_above(s, garment)]
    return [s.cloths() for s in mounts if joins or len({s.part, seam.part} - {""}) < 2]


def doubled_near(seam: Seam, garment: Garment) -> list[tuple[str, ...]]:
    """Two cloths that lie on each other in the seams of the part of a place, the face first.

    A seam that joins each of them to its like has the faces in its middle. One such seam may have
    been written for two bodies that hang in each other; of several, they lie as one. What a place
    quilts or mounts tells by itself where it lies, and no cloth lies in a part that has none of it.
    """
    part = next((set(p.layers) for p in garment.parts if p.name == seam.part and p.layers), None)
    told = [set(s.cloths()) for s in garment.seams if s.place in HELD]
    own = (s for s in garment.seams if len({s.part, seam.part} - {""}) < PARTS)
    found = Counter(pair for s in own if (pair := _plies(s)) for _ in range(s.making.times))
    often = [pair for pair, number in found.items() if number >= OFTEN]
    often = [pair for pair in often if not any(set(pair) <= cloths for cloths in told)]
    near = [pair for pair in often if part is None or set(pair) <= part]
    lies = (p for p in near if seam.place != TIES)
    return [pair for pair in lies if all(_as_far(cloth, seam, garment) for cloth in pair)]


def _as_far(cloth: str, seam: Seam, garment: Garment) -> bool:
    """Whether a cloth whose pieces are written is long or wide enough to lie along a place."""
    pieces = [p for p in garment.plan.pieces if p.cloth == cloth and not p.joined]
    long = seam.facts.get("length")
    if not long or not pieces or any(p.number is None for p in pieces):
        return True
    down = max(p.height for p in pieces)
    across = sum(p.width * (p.number or 1) for p in pieces)
    return float(long) <= max(down, across)


def _plies(seam: Seam) -> tuple[str, ...]:
    """Face and backing of a seam of four plies that read alike from both ends; () of any other."""
    plies = [use.cloth for use in seam.uses]
    alike = len(plies) == DOUBLED and plies == plies[::-1] and plies[0] != plies[1]
    return (plies[1], plies[0]) if alike and seam.place == PLAIN else ()


def holds_by_backing(seam: Seam, garment: Garment, knowledge: Knowledge) -> tuple[str, ...]:
    """What the backing says of a seam of mounted pieces under a strong load; () where none is.

    The load is said, or told by bones and lacing. The needle goes through a firm backing at an
    edge as well, load or none.
    """
    if seam.place not in JOINS | EDGES or seam.facts.get("stress") == "low":
        return ()
    near = (names for names in mounts_near(seam, garment) if len(names) > 1)
    mine = [names for names in near if names[0] in seam.cloths()]
    entries = {name: knowledge.entries[cloth.entry] for name, cloth in garment.cloths.items()}
    firm = {
        entries[name].structure
        for names in mine
        for name in names[1:]
        if (least := FIRM_FROM.get(entries[name].structure))
        and (garment.cloths[name].weight or (0.0,))[0] >= least
    }
    held = {name for names in mine for name in names}
    drawn = (
        {entries[name].id, entries[name].kind} & LOADS
        for other in garment.seams
        if held & set(other.cloths())
        for name in other.cloths()
    )
    if seam.place in EDGES and seam.facts.get("stress") != "high":
        return (NEEDLE,) if "woven" in firm else ()
    on_sleeve = SLEEVE in singular_words(seam.name) and seam.place == "seam"
    pulled = not on_sleeve and any(drawn)  # no lacing and no bone draws on a sleeve
    if not firm or not (seam.facts.get("stress") == "high" or pulled):
        return ()
    return HOLDS if "woven" in firm else (THREAD,)

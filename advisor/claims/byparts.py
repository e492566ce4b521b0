"""The last press of a garment of which a part takes no iron: the rest is pressed part by part.

A collar of fur or a panel of leather spoils nothing for the cloth beside it, so the whole is not
left unpressed for it (common practice). Where most of the garment takes no iron, none of it is.
"""

from __future__ import annotations

from collections.abc import Mapping

from advisor.claims.collect import Place
from advisor.claims.combine import Verdict
from advisor.claims.speakers import IRONING
from advisor.claims.valuesets import Span
from advisor.claims.workarounds import Instruction
from advisor.craft.irondial import mark_for
from advisor.knowledge.model import COLD, LIMIT_ASPECT, Knowledge
from advisor.project.garment import Garment, Seam
from advisor.project.linings import lining_by_seams, of_a_part, unit_of

PARTS = "by parts"
AFTERWARDS = frozenset({"feather-trim", "glass-stone"})
"""What is put on when the last press is done, and so never lies under it."""
TENDER = frozenset({"cloth", "trim", "tape"})
"""What may lie by itself in a place that takes no iron: a tie of webbing as a collar of fur."""
USUAL_MM = 500.0
"""The length of a seam that says none, mm: estimate."""

Verdicts = Mapping[Place, Mapping[str, Verdict]]


def pressed_by_parts(
    garment: Garment, verdicts: Verdicts, knowledge: Knowledge, hung: frozenset[str]
) -> tuple[Instruction, ...]:
    """What is pressed part by part where no iron suits the whole; nothing where one does.

    What is `hung` up instead is told by itself.
    """
    whole = Place("garment", garment.name)
    if LIMIT_ASPECT not in verdicts.get(whole, {}) or _marked(top_of(whole, verdicts)):
        return ()
    highs = {seam.name: top_of(Place("seam", seam.name), verdicts) for seam in garment.seams}
    warm = [seam for seam in garment.seams if _marked(highs[seam.name])]
    if 2 * sum(map(length_of, warm)) <= sum(map(length_of, garment.seams)):
        return ()
    entries = knowledge.entries
    there = {n: entries[c.entry] for n, c in garment.cloths.items() if c.entry not in AFTERWARDS}
    kinds = {name: entry.kind for name, entry in there.items()}
    under = {name for seam in warm for name in seam.cloths()}
    pressed = {name for name in under if kinds.get(name) == "cloth"} - hung
    tender = {name for name, kind in kinds.items() if kind in TENDER} - under - hung
    if not tender or not pressed or lines_all(garment, knowledge) & tender:
        return ()
    best = (max(highs[s.name] for s in warm if n in s.cloths()) for n in pressed)
    return (Instruction(PARTS, frozenset(pressed), frozenset(tender), (whole,), min(best)),)


def lines_all(garment: Garment, knowledge: Knowledge) -> frozenset[str]:
    """The cloths of a lining that lies behind the whole shell: no part of that is pressed alone.

    Its own seams come to more than half of the shell's.
    """
    kinds, entries = knowledge.places.kinds, knowledge.entries
    there = {name: entries[cloth.entry] for name, cloth in garment.cloths.items()}
    linings = lining_by_seams(garment.seams, there, kinds)
    seams = [s for s in garment.seams if s.place in kinds and kinds[s.place].family == "seam"]
    units = [(unit_of(s, there, linings), s) for s in seams]
    lined, shell = (
        sum(length_of(seam) for unit, seam in units if unit == one and not of_a_part(seam))
        for one in ("lining", "shell")
    )
    return linings if 2 * lined > shell > 0 else frozenset()


def smoothed(parted: Instruction | None, garment: Garment, knowledge: Knowledge) -> frozenset[str]:
    """What such a press leaves to the hands though it bears an iron of its own, by its own care."""
    if parted is None:
        return frozenset()
    claims = {n: knowledge.entries[garment.cloths[n].entry].claims for n in parted.tender}
    lids = {
        name: [c.span[1] for c in said if c.aspect == IRONING and c.span]
        for name, said in claims.items()
    }
    return frozenset(name for name, most in lids.items() if min(most, default=0) > 0)


def spared(parted: Instruction | None) -> frozenset[str]:
    """What such a press keeps the iron off: no later iron comes over it either."""
    return frozenset() if parted is None else parted.tender


def top_of(place: Place, verdicts: Verdicts) -> float:
    """The hottest iron that is advised in a place, °C; no iron where nothing is."""
    found = verdicts.get(place, {}).get(LIMIT_ASPECT)
    span = None if found is None else found.advised
    return span.high if isinstance(span, Span) and not span.is_empty else COLD


def _marked(high: float) -> bool:
    """Whether a dial goes so low."""
    return high > COLD and mark_for(high) is not None


def length_of(seam: Seam) -> float:
    """The length of all of a place together, mm."""
    return float(seam.facts.get("length", USUAL_MM)) * seam.making.times

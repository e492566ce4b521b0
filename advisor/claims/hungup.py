"""What is left out of the last press: a pile whose label forbids the iron, or that is only steamed.

Its seams are pressed from behind while the pile lies in its wires; once the garment is whole no
board comes under it, and the creases of a pile drop where it hangs.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from typing import Final

from advisor.claims.collect import Place
from advisor.claims.placefacts import BADLY, VELVETS
from advisor.claims.speakers import IRONING, Said
from advisor.claims.workarounds import RESTING, Instruction
from advisor.knowledge.model import COLD, Entry, Knowledge
from advisor.project.garment import Garment

MOTION: Final = "press.motion"
HUNG: Final = "hung"
"""An instruction for what the last press leaves out."""


def hung_up(
    garment: Garment, whole: Mapping[str, Sequence[Said]], knowledge: Knowledge
) -> frozenset[str]:
    """The piles of a garment that bear no iron when it is made, by their care or how they give."""
    barred = {
        name
        for said in whole.get(IRONING, ())
        if said.claim.span and not said.claim.span[1]
        for name in said.cloths
    }
    if garment.single:
        return frozenset()
    entries = {name: knowledge.entries[cloth.entry] for name, cloth in garment.cloths.items()}
    steamed = {name for name, entry in entries.items() if _only_steamed(entry, knowledge)}
    return frozenset(steamed | {name for name in barred if crushed(entries[name])})


def crushed(entry: Entry) -> bool:
    """Whether whatever rests on the woven pile of a cloth crushes it."""
    return _marked(entry) and entry.structure == "woven"


def _only_steamed(entry: Entry, knowledge: Knowledge) -> bool:
    """Whether a pile on a knitted ground, which no board carries, is steamed and never pressed."""
    if MOTION not in knowledge.aspects:
        return False
    words = knowledge.aspects[MOTION].words
    rests = sum(1 << i for i, word in enumerate(words) if word in RESTING)
    ways = [claim.mask for claim in entry.claims if claim.aspect == MOTION]
    return _marked(entry) and entry.structure == "knit" and any(not way & rests for way in ways)


def _marked(entry: Entry) -> bool:
    return entry.family == VELVETS and entry.traits.get("press marks", (0, 0))[0] >= BADLY


def hanging_with(hung: frozenset[str], garment: Garment) -> frozenset[str]:
    """What hangs from the last press: the piles, and what lies on nothing but them."""
    places = [frozenset(seam.cloths()) for seam in garment.seams]
    others = frozenset().union(*(cloths for cloths in places if not cloths & hung))
    beside = frozenset().union(*(cloths for cloths in places if cloths & hung)) - others
    return hung | beside if hung else hung


def left_hanging(hung: frozenset[str], whole: Place) -> tuple[Instruction, ...]:
    """What is told of them."""
    return (Instruction(HUNG, frozenset(), hung, (whole,), COLD),) if hung else ()

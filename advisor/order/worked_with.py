"""What lies on a cloth by the time that it is pressed hot by itself: its sewn-in interfacing.

A collar is pressed when it is made up and turned, so its iron suits what is basted to it, as long
as the cloth still gets the heat that it needs. Else it is pressed as bare pieces, before that.
"""

from __future__ import annotations

from collections.abc import Sequence
from itertools import pairwise

from msgspec.structs import replace

from advisor.claims.speakers import is_heat_need
from advisor.claims.workarounds import GLUED
from advisor.knowledge.model import COLD, LIMIT_ASPECT
from advisor.order.kinds import SeamPlace
from advisor.order.setups import Setups
from advisor.order.steps import IronState
from advisor.project.garment import Seam

SEWN_IN, FASTENING = "sew-in", "fastening"


def iron_with(
    cloth: str, places: Sequence[SeamPlace], tender: frozenset[str], setups: Setups
) -> tuple[IronState | None, float | None]:
    """How the iron is set for a cloth and what is basted to it, and the hottest that it may be.

    Where only some of what is sewn of it without the tender is interfaced, that waits instead.
    """
    iron, most = setups.cloth_iron(cloth), setups.cloth_most(cloth)
    lid, least = _lid(cloth, places, setups), _needs(cloth, setups)
    made = [p for p in places if cloth in p.cloths and not tender & set(p.cloths)]
    made = [p for p in made if p.kind.family != FASTENING]
    backed = all(_interfacings(cloth, [p], setups) for p in made)
    if iron is None or most is None or lid is None or not COLD < least <= lid < most or not backed:
        return iron, most
    both = setups.iron(setups.alone((cloth, *_interfacings(cloth, places, setups))))
    if both is None:
        return iron, most
    heat = min(max(least, both.temperature_c), lid)
    return replace(iron, temperature_c=int(heat), moisture=both.moisture), lid


def bears_less(cloth: str, heat: float, place: SeamPlace, setups: Setups) -> bool:
    """Whether an interfacing that is basted to a cloth at a place bears less than its hot press."""
    lid = _lid(cloth, [place], setups)
    return lid is not None and lid < heat


def wholly_fused(cloth: str, setups: Setups) -> bool:
    """Whether all that is sewn of a cloth alone has a glue in it: no hot press is left for after.

    Its pieces are pressed while they are loose then, and fused afterwards.
    """
    entries, cloths = setups.knowledge.entries, setups.garment.cloths
    kinds = ({entries[cloths[n].entry].kind for n in s.cloths()} for s in _alone(cloth, setups))
    return all(not GLUED.isdisjoint(found) for found in kinds)


def _alone(cloth: str, setups: Setups) -> list[Seam]:
    """The places in which it lies with no other cloth."""
    entries, cloths = setups.knowledge.entries, setups.garment.cloths
    return [
        s
        for s in setups.garment.seams
        if {n for n in s.cloths() if entries[cloths[n].entry].kind == "cloth"} == {cloth}
    ]


def _interfacings(cloth: str, places: Sequence[SeamPlace], setups: Setups) -> list[str]:
    """What is basted to a cloth: the interfacings of which it is the layer before, or the first."""
    entries, cloths = setups.knowledge.entries, setups.garment.cloths
    found = []
    for place in places:
        names = place.seam.cloths()
        under = pairwise((*names[1:2], *names))
        found += [n for first, n in under if first == cloth and n in place.notions]
    return list(dict.fromkeys(n for n in found if entries[cloths[n].entry].kind == SEWN_IN))


def _lid(cloth: str, places: Sequence[SeamPlace], setups: Setups) -> float | None:
    lids = (setups.bears_alone(n) for n in _interfacings(cloth, places, setups))
    return min((lid for lid in lids if lid is not None), default=None)


def _needs(cloth: str, setups: Setups) -> float:
    """The least heat without which a cloth is not pressed at all, °C."""
    found = setups.judged(setups.alone((cloth, cloth))).get(LIMIT_ASPECT)
    said = (s.claim for s in (found.because if found else ()) if is_heat_need(s.claim))
    return max((c.span[0] for c in said if c.strength == "must" and c.span), default=COLD)

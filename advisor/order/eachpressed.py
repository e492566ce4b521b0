"""The last press of garments that nothing joins: each by itself, as hot as its own places bear."""

from __future__ import annotations

from typing import TYPE_CHECKING

from advisor.claims.collect import Place
from advisor.order.steps import IronState
from advisor.units import show

if TYPE_CHECKING:
    from collections.abc import Sequence

    from advisor.order.kinds import SeamPlace
    from advisor.order.setups import Setups
    from advisor.project.garment import Garment

FASTENING, MOIST = "fastening", "press.moisture"


def each_pressed(garment: Garment, places: Sequence[SeamPlace], setups: Setups) -> str:
    """How each garment of a project is pressed at last; "" where something is left of a whole."""
    if not garment.cloths or not all(cloth.detachable for cloth in garment.cloths.values()):
        return ""
    told = [_pressed(part.name, garment, places, setups) for part in garment.parts]
    return f"Press each garment once more by itself: {'; '.join(told)}"


def _pressed(part: str, garment: Garment, places: Sequence[SeamPlace], setups: Setups) -> str:
    """One of them, by the coolest and driest of its places that take an iron."""
    irons, beside = [], set()
    for place in (p for p in places if p.seam.part == part):
        where = Place("seam", place.name)
        iron = setups.iron(where)
        if iron is None or place.kind.family == FASTENING:
            beside |= set(place.notions)  # the iron goes round what fastens
        else:
            irons.append((iron, setups.iron_most(where) or iron.temperature_c))
    if not irons:
        return f"{part} with the hands alone"
    most = show("temperature", min(limit for _, limit in irons), garment.units)
    round_it = f", round the {' and '.join(sorted(beside))}" if beside else ""
    return f"{part} at most {most}, {_driest([iron for iron, _ in irons], setups)}{round_it}"


def _driest(irons: Sequence[IronState], setups: Setups) -> str:
    words = setups.knowledge.aspects[MOIST].words
    return min((iron.moisture for iron in irons), key=words.index)

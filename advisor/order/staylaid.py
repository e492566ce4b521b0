"""What is laid along a seam to hold its length, and which iron that bears.

Laid before its seam is sewn, it is in by the time that its cloth is pressed by itself or that a
seam beside it is, whether the maker lists it among the layers or the sheet advises it.
"""

from __future__ import annotations

from typing import Final

from advisor.claims.collect import Place
from advisor.claims.laidalong import laid_in
from advisor.knowledge.model import LIMIT_ASPECT
from advisor.knowledge.places import PLAIN
from advisor.order.kinds import crosses
from advisor.order.setups import Setups
from advisor.order.tasks import Task

STAY, TAPE = "stay", "tape"
LAYS: Final = frozenset({STAY, TAPE})
"""The work that lays something along a seam."""
ALONG: Final = frozenset({"elastic", "tape"})
"""Kinds of notion that lie along the line of a seam."""
HOLDS: Final = "elastic"
"""The kind of notion that a method lays along its seam and that an iron melts; a tape is woven."""


def melts(hot: Task, laying: Task, setups: Setups) -> frozenset[str]:
    """What a task lays along a seam and another, hotter one would spoil; nothing if it bears it."""
    if laying.op not in LAYS or laying.place is None or hot.step.iron is None:
        return frozenset()
    heat = hot.step.iron.temperature_c
    return frozenset(name for name, most in _laid(laying, setups).items() if most < heat)


def out_of_reach(hot: Task, joined: Task, setups: Setups) -> frozenset[str]:
    """What lies along the line of a seam alone, where an iron at another comes nowhere near it.

    A tape or an elastic in a seam lies under an iron only where one of the two seams ends in it.
    """
    here, there = joined.place, hot.place
    if here is None or there is None or here.kind.id != PLAIN:
        return frozenset()
    if crosses(here, there) or crosses(there, here):
        return frozenset()
    entries, cloths = setups.knowledge.entries, setups.garment.cloths
    return frozenset(n for n in here.notions if entries[cloths[n].entry].kind in ALONG)


def _laid(laying: Task, setups: Setups) -> dict[str, float]:
    """What a task lays along its seam, with the heat that it bears, °C."""
    place = laying.place
    if place is None:
        return {}
    if laying.op == STAY:
        entry = laid_in(setups.judged(Place("seam", place.name)), setups.knowledge)
        claims = entry.claims if entry is not None and entry.kind == HOLDS else ()
        lids = [c.span[1] for c in claims if c.aspect == LIMIT_ASPECT and c.guards and c.span]
        return {entry.name: min(lids)} if entry is not None and lids else {}
    entries, cloths = setups.knowledge.entries, setups.garment.cloths
    held = [n for n in place.notions if entries[cloths[n].entry].kind == HOLDS]
    bears = {name: setups.bears_alone(name) for name in held}
    return {name: most for name, most in bears.items() if most is not None}

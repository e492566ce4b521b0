"""What the ways of making use up: glue, sealing tape, cord, topstitching thread.

A method says what it needs; a thing that several places need is bought once for all of them.
"""

from __future__ import annotations

from collections.abc import Mapping

from advisor.decide.kit import Need, seam_length, state_of
from advisor.knowledge.places import Method, Thing
from advisor.project.garment import Garment

GROUP = "in the seam"
LENGTH, PIECE = "length", "piece"


def used_up(garment: Garment, methods: Mapping[str, Method]) -> list[Need]:
    """Everything that the methods of a garment use up, with the places that want it.

    Args:
        garment: the garment, whose places have their lengths and times.
        methods: the way in which each place is made, by its name.
    """
    wanted: dict[Thing, list[str]] = {}
    for seam in garment.seams:
        method = methods.get(seam.name)
        for thing in method.buys if method is not None else ():
            wanted.setdefault(thing, []).append(seam.name)
    return [_need(thing, tuple(places), garment) for thing, places in wanted.items()]


def _need(thing: Thing, places: tuple[str, ...], garment: Garment) -> Need:
    times = sum(seam.making.times for seam in garment.seams if seam.name in places)
    name = f"{thing.name} ({thing.note})" if thing.note else thing.name
    return Need(
        GROUP,
        name,
        "",
        thing.name,
        places,
        state_of(garment, "tools", thing.name),
        length=seam_length(garment, places) if thing.unit == LENGTH else None,
        number=times if thing.unit == PIECE else None,
    )

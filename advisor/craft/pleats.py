"""Widths of knife, box and inverted pleats, and their taper from hip to waist.

Geometry (`derived`), agreeing with `new-dressmaker-1921`; spacing over an edge as in
`dressmaking-course-5`. Lengths in any one unit. v is the visible face of a pleat, d the
depth of a fold, s the flat cloth between pleats.
"""

from __future__ import annotations

import math
from enum import StrEnum
from typing import Final

from msgspec import Struct

from advisor.craft import checks

SOURCES: Final[tuple[str, ...]] = ("derived", "new-dressmaker-1921", "dressmaking-course-5")


class Pleat(StrEnum):
    """Kinds of pleat."""

    KNIFE = "knife"
    BOX = "box"
    INVERTED = "inverted"


class Pleating(Struct, frozen=True):
    """A row of pleats: cut and finished width, their ratio, whether the folds touch."""

    cut: float
    finished: float
    ratio: float
    take_up: float
    touching: bool
    sources: tuple[str, ...] = SOURCES


OVERLAPS: Final = 4
"""Over how many of its neighbours a knife pleat may lie, as in a kilt: estimate."""


def deepest(kind: Pleat, face: float, spacing: float = 0.0) -> float:
    """The deepest fold that can be laid: v + s, over and over for knife pleats, half for two-way.

    Knife pleats all lie one way, so that one may lie on the next; two-way folds would meet.
    """
    room = checks.above("face", face) + checks.at_least("spacing", spacing, 0)
    return room * OVERLAPS if kind is Pleat.KNIFE else room / 2


def layers(kind: Pleat, face: float, depth: float, spacing: float = 0.0) -> int:
    """The plies where most folds lie on one another: 3, and 2 more for each fold lain over.

    Both folds of a box pleat lie under its face, and over each other if deeper than half of it.
    """
    if kind is not Pleat.KNIFE:
        return 3 if depth <= _meeting(kind, face, spacing) * (1 + 1e-9) else 5
    room = checks.above("face", face) + checks.at_least("spacing", spacing, 0)
    return 1 + 2 * math.ceil(checks.above("fold depth", depth) / room - 1e-9)


def pleats(
    kind: Pleat, number: int, face: float, depth: float, *, spacing: float = 0.0
) -> Pleating:
    """A row of pleats: knife n(v + 2d + s), box and inverted n(v + 4d + s).

    Folds that just touch give 3 : 1, knife pleats that lie over one another more. Raises
    ValueError for an underlap deeper than its spacing allows.
    """
    pleat_count = checks.count("number of pleats", number)
    most = deepest(kind, face, spacing)
    if checks.above("fold depth", depth) > most * (1 + 1e-9):
        raise ValueError(
            f"an underlap {depth:g} deep is deeper than its spacing allows: "
            f"{most:g} at most for a {kind} pleat with a face of {face:g}"
        )
    take_up = (2 if kind is Pleat.KNIFE else 4) * depth
    finished = pleat_count * (face + spacing)
    cut = finished + pleat_count * take_up
    touching = depth >= _meeting(kind, face, spacing) * (1 - 1e-9)
    return Pleating(cut, finished, cut / finished, take_up, touching)


def _meeting(kind: Pleat, face: float, spacing: float) -> float:
    """The depth at which folds meet: the next pleat's, or the other one's of the same pleat."""
    if kind is Pleat.BOX:
        return checks.above("face", face) / 2
    return (face + spacing) / (1 if kind is Pleat.KNIFE else 2)


def pitch(edge: float, number: int, first: float = 0.0) -> float:
    """Distance from pleat to pleat on an edge: (edge − first pleat) ÷ number of the rest."""
    rest = checks.above("edge", edge) - checks.at_least("first pleat", first, 0)
    if rest <= 0:
        raise ValueError(f"a first pleat of {first:g} leaves nothing of an edge of {edge:g}")
    return rest / checks.count("number of pleats", number)


def tapered_take_up(hip_take_up: float, hip: float, waist: float, number: int) -> float:
    """What one pleat takes up at the waist: its take-up at the hip + (hip − waist) ÷ n.

    Take-up is the whole cloth in a fold (2d for a knife pleat). Raises ValueError when the
    hip is smaller than the waist by more than the pleats can give.
    """
    change = (checks.above("hip", hip) - checks.above("waist", waist)) / checks.count(
        "number of pleats", number
    )
    taken = checks.above("take-up at the hip", hip_take_up) + change
    if taken < 0:
        raise ValueError(f"pleats taking up {hip_take_up:g} cannot let out {-change:g} each")
    return taken

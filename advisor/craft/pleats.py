"""Widths of knife, box and inverted pleats, and their taper from hip to waist.

Geometry (`derived`), agreeing with `new-dressmaker-1921`; spacing over an edge as in
`dressmaking-course-5`. Lengths in any one unit. v is the visible face of a pleat, d the
depth of a fold, s the flat cloth between pleats.
"""

from __future__ import annotations

from dataclasses import dataclass
from enum import StrEnum
from typing import Final

from advisor.craft import checks

SOURCES: Final[tuple[str, ...]] = ("derived", "new-dressmaker-1921", "dressmaking-course-5")


class Pleat(StrEnum):
    """Kinds of pleat."""

    KNIFE = "knife"
    BOX = "box"
    INVERTED = "inverted"


@dataclass(frozen=True, slots=True)
class Pleating:
    """A row of pleats: cut and finished width, their ratio, whether the folds touch."""

    cut: float
    finished: float
    ratio: float
    take_up: float
    touching: bool
    sources: tuple[str, ...] = SOURCES


def deepest(kind: Pleat, face: float, spacing: float = 0.0) -> float:
    """The deepest fold before one underlap lies on the next: v + s, or half for two-way."""
    room = checks.above("face", face) + checks.at_least("spacing", spacing, 0)
    return room if kind is Pleat.KNIFE else room / 2


def pleats(
    kind: Pleat, number: int, face: float, depth: float, *, spacing: float = 0.0
) -> Pleating:
    """A row of pleats: knife n(v + 2d + s), box and inverted n(v + 4d + s).

    Folds that just touch give 3 : 1. Raises ValueError for an underlap deeper than its
    spacing allows.
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
    return Pleating(cut, finished, cut / finished, take_up, depth >= most * (1 - 1e-9))


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

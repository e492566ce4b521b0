"""Which cloths make no part of the body: they lie on it as pockets, or bind its edges."""

from __future__ import annotations

from typing import Final

from msgspec.structs import replace

from advisor.knowledge.model import Knowledge
from advisor.project.bindings import strip_of
from advisor.project.garment import Garment, Seam
from advisor.project.hemstrips import hem_strip
from advisor.project.placing import POCKETS

BOUND: Final = "bound-edge"
LAID: Final = "laid on"
CORD, BIAS = "piping-cord", "bias"
"""The cord that is covered by a strip, and how that is cut."""


def with_trims(garment: Garment, knowledge: Knowledge) -> Garment:
    """The garment, its cloths that are only laid on or bind marked as trims."""
    makes: dict[str, list[bool]] = {name: [] for name in garment.cloths}
    for seam in (s for s in garment.seams if makes.keys() >= set(s.cloths())):
        aside = _aside(seam, garment, knowledge)
        for name in seam.cloths():
            makes[name].append(name not in aside)
    trims = {name for name, found in makes.items() if found and not any(found)}
    cloths = {n: replace(c, trims=True) if n in trims else c for n, c in garment.cloths.items()}
    return replace(garment, cloths=cloths) if trims else garment


def _aside(seam: Seam, garment: Garment, knowledge: Knowledge) -> frozenset[str]:
    """The cloths of a place that are laid on there or bind: all but the first."""
    kind = knowledge.places.kinds.get(seam.place)
    entries = {n: knowledge.entries[cloth.entry] for n, cloth in garment.cloths.items()}
    laid = seam.place in (*POCKETS, BOUND) or (kind is not None and kind.family == LAID)
    cloths = seam.cloths()
    strip = strip_of(seam, garment) if seam.place == BOUND and len(cloths) > 1 else ""
    host = next((name for name in cloths if name != strip), "")
    rest = (
        [n for n in cloths if n != host]
        if laid
        else [n for n in [hem_strip(seam, garment, entries)] if n]
    )
    if any(entry.id == CORD for entry in map(entries.__getitem__, seam.cloths())):
        rest = [*rest, *(piece.cloth for piece in garment.plan.pieces if piece.grain == BIAS)]
    return frozenset(rest) - {host}

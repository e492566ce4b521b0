"""Which finished edge a fastening lies on: its holes go through every layer of that edge.

`on: tapestry` names the cloth that is seen. What faces or lines the edge lies under the same iron.
"""

from __future__ import annotations

from typing import Final

from advisor.project.buttons import alike
from advisor.project.garment import Garment, Seam

FASTENED: Final = frozenset({"buttonhole", "button", "lacing", "snap", "hook", "clasp"})
"""Kinds of place that are made through an edge, or sewn to it."""
EDGES: Final = frozenset({"faced-edge", "bound-edge", "front-band", "waistband", "cuff"})
"""Kinds of place that are such an edge."""


def edge_cloths(seam: Seam, garment: Garment) -> tuple[str, ...]:
    """The other cloths of the edges that a fastening lies on.

    Those that it is said to cross or is called after; where none is, whichever holds its cloth.
    """
    if seam.place not in FASTENED:
        return ()
    here = set(seam.cloths())
    edges = [s for s in garment.seams if s.place in EDGES and here & set(s.cloths())]
    edges = [s for s in edges if not (s.part and seam.part) or s.part == seam.part]
    said = [s for s in edges if s.name in seam.making.crosses]
    near = said or [s for s in edges if alike(seam, s, garment)] or edges
    return tuple(sorted({name for s in near for name in s.cloths()} - here))

"""Which finished edge a fastening lies on: its holes go through every layer of that edge.

`on: tapestry` names the cloth that is seen. What faces or lines the edge lies under the same iron.
"""

from __future__ import annotations

from typing import Final

from advisor.knowledge import nouns
from advisor.project.buttons import HOLES, alike
from advisor.project.garment import Garment, Seam
from advisor.project.placing import singular_words

FASTENED: Final = frozenset({"buttonhole", "button", "lacing", "snap", "hook", "clasp"})
"""Kinds of place that are made through an edge, or sewn to it."""
EDGES: Final = frozenset({"faced-edge", "bound-edge", "front-band", "waistband", "cuff"})
"""Kinds of place that are such an edge."""
BAND: Final = "front-band"
"""What is made to be buttoned; beside it, what closes another edge is called after that."""
MADE_UP = "ties"
"""What is made up by itself: holes that are called after it go through its layers."""
FRONT: Final = "front"
SLIT: Final = "slit"
"""What a strap is passed through: it is cut in the garment, and not in the strap."""


def edge_cloths(seam: Seam, garment: Garment) -> tuple[str, ...]:
    """The other cloths of the edges that a fastening lies on.

    Those that it is said to cross or is called after, of these a band down the front; where none
    is and it names no spot, the edges of a front; else whichever holds its cloth.
    """
    if seam.place not in FASTENED:
        return ()
    here = set(seam.cloths())
    edges = [s for s in garment.seams if s.place in EDGES and here & set(s.cloths())]
    edges = [s for s in edges if not (s.part and seam.part) or s.part == seam.part]
    said = [s for s in edges if s.name in seam.making.crosses]
    called = straps_of(seam, garment) or [s for s in edges if alike(seam, s, garment)]
    bands = [s for s in called if s.place == BAND]
    near = said or bands or _fronts(seam, edges) or called or edges
    return tuple(sorted({name for s in near for name in s.cloths()} - here))


def _fronts(seam: Seam, edges: list[Seam]) -> list[Seam]:
    """The edges of a front, for what only says with what it fastens, as bound buttonholes."""
    if set(singular_words(seam.name)) - nouns.HOW_HOLED:
        return []
    return [s for s in edges if FRONT in singular_words(s.name)]


def straps_of(seam: Seam, garment: Garment) -> list[Seam]:
    """The straps that holes are called after, and whose cloth they go through."""
    here, said = set(seam.cloths()), set(singular_words(seam.name))
    words = nouns.BELTS & said if SLIT not in said else set()
    made = (s for s in garment.seams if s.place == MADE_UP and seam.place == HOLES)
    return [s for s in made if here & set(s.cloths()) and words & set(singular_words(s.name))]

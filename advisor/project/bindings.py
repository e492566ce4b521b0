"""Which layer of a bound edge is the strip: a maker lists it first as often as last."""

from __future__ import annotations

from advisor.knowledge import nouns
from advisor.project.garment import Garment, Seam
from advisor.project.headwords import speaks_of


def strip_of(seam: Seam, garment: Garment) -> str:
    """The cloth that binds an edge: called so, or cut in nothing but bindings; else the last."""
    cloths = [n for n in seam.cloths() if not garment.cloths[n].put_in or _called(n)]
    cloths = cloths or list(seam.cloths())
    cut = {n: [p.name for p in garment.plan.pieces if p.cloth == n] for n in cloths}
    for binds in (
        [n for n in cloths if _called(n)],
        [n for n, pieces in cut.items() if pieces and all(map(_called, pieces))],
    ):
        if binds and len(binds) < len(cloths):
            return binds[-1]
    return cloths[-1]


def _called(name: str) -> bool:
    return speaks_of(name, nouns.BINDS)

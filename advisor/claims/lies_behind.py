"""Where a backing lies: not behind a panel that it is not basted to, by its pieces or its name.

A half lining in the fronts of trousers is under no iron at a dart of the back, nor at the hem of a
leg below its own hem. What names no panel may lie behind all of them.
"""

from __future__ import annotations

from typing import Final

from advisor.knowledge import nouns
from advisor.project.garment import Garment, Seam
from advisor.project.linings import ends_short, of_a_part
from advisor.project.placing import singular_words

HEM: Final = "hem"
ENDS: Final = frozenset({HEM, "raw", "bound"})
"""Edges at which a half lining ends by itself."""


def may_lie(mount: Seam, seam: Seam, garment: Garment) -> bool:
    """Whether what is basted on at one place may lie behind another."""
    on, here = (set(garment.wishes.joins.get(s.name, ())) for s in (mount, seam))
    if on and here and not on & here:
        return False
    lies, runs = panels(mount, garment), panels(seam, garment)
    if lies and runs and not lies & runs:
        return False
    return not (_edge(seam) == HEM and ends_above(mount, garment))


def panels(seam: Seam, garment: Garment) -> frozenset[str]:
    """The panels that a place names, by itself and by the pieces that it joins."""
    names = (seam.name, *garment.wishes.joins.get(seam.name, ()))
    return frozenset(word for name in names for word in _panels_in(name))


def _panels_in(name: str) -> set[str]:
    words = singular_words(name)
    before = ("", *words)
    return {
        w
        for w, left in zip(words, before, strict=False)
        if w in nouns.HALVES and left not in nouns.FOLDED
    }


def _edge(seam: Seam) -> object:
    return seam.facts.get("edge")


def ends_above(mount: Seam, garment: Garment) -> bool:
    """Whether what is mounted there reaches part of the way only, and has an edge of its own."""
    behind = set(mount.cloths()[1:])
    ends = (s for s in garment.seams if _edge(s) in ENDS and set(s.cloths()) <= behind)
    return any(ends) and (of_a_part(mount) or ends_short(behind, garment))

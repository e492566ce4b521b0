"""A cloth whose pattern is matched is cut single: on a fold nobody sees the lower layer."""

from __future__ import annotations

from typing import Final

from advisor.claims.collect import Place
from advisor.claims.combine import Verdict, narrowed
from advisor.claims.valuesets import Choice
from advisor.project.garment import Garment
from advisor.project.placing import singular_words

LAY: Final = "cut.lay"
SINGLE: Final = "single"
WHY: Final = "Its pattern is matched, and nobody sees on a fold whether the lower layer lies on it."
JOINED: Final = frozenset({"seam", "yoke", "zip", "placket"})
"""Kinds of place whose two sides are looked at side by side."""


def matched_singly(garment: Garment, verdicts: dict[Place, dict[str, Verdict]]) -> None:
    """Lay each cloth of matched pieces in a single layer, where it may be laid so."""
    for name in sorted({p.cloth for p in garment.plan.pieces if p.matched}):
        by_aspect = verdicts.get(Place("fabric", name), {})
        lay = by_aspect.get(LAY)
        if lay is None or lay.clash or not isinstance(lay.allowed, Choice):
            continue
        words = [lay.aspect.words[at] for at in lay.allowed.options()]
        single = [word for word in words if word.startswith(SINGLE)]
        if single and len(single) < len(words):
            by_aspect[LAY] = narrowed(lay, single, WHY)


def matched_at(garment: Garment, cloth: str) -> tuple[str, ...]:
    """The seams at which pieces of a cloth meet that are said to be matched, in their order."""
    pieces = {p.name for p in garment.plan.pieces if p.matched and p.cloth == cloth}
    words = [set(singular_words(name)) for name in pieces]
    joins = garment.wishes.joins
    return tuple(
        seam.name
        for seam in garment.seams
        if seam.place in JOINED
        and sum(use.cloth == cloth for use in seam.uses) > 1
        and _all_matched([set(singular_words(n)) for n in joins.get(seam.name, ())], words)
    )


def _all_matched(joined: list[set[str]], matched: list[set[str]]) -> bool:
    """Whether every piece that a seam joins is one of those that are matched."""
    return bool(joined) and all(words in matched for words in joined)

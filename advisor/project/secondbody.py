"""The cloth of a lining that is called after what it is: a second body, seam for seam in the first.

A maker lines a gown with a cloth that she calls `quilt`, and its seams after that. It lines where
a place says so, as `lining hem`, and where its seams are those of the other cloth once more.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from itertools import permutations
from typing import Final

from advisor.knowledge.model import Entry
from advisor.project.garment import Seam
from advisor.project.headwords import the_words

LINING: Final = "lining"
TWINS: Final = 2
"""From so many seams that both cloths have on a garment has a second body: estimate."""


def second_bodies(seams: Sequence[Seam], entries: Mapping[str, Entry]) -> frozenset[str]:
    """The cloths that line another of the same seams, by a place that says so of both."""
    found: set[str] = set()
    for seam in seams:
        cloths = {n for n in seam.cloths() if n in entries and entries[n].kind == "cloth"}
        if LINING in the_words(seam.name) and len(cloths) == TWINS:
            pairs = permutations(sorted(cloths), TWINS)
            found |= {inner for inner, outer in pairs if _called_after(inner, outer, seams)}
    return frozenset(found)


def _called_after(inner: str, outer: str, seams: Sequence[Seam]) -> bool:
    """Whether the seams of a cloth are called after it, and else as those of the other cloth."""
    own, named = the_words(inner), set()
    for seam in seams:
        words = the_words(seam.name)
        if set(seam.cloths()) == {inner} and words[: len(own)] == own:
            named.add(words[len(own) :])
    others = {the_words(s.name) for s in seams if set(s.cloths()) == {outer}}
    return len(named & others) >= TWINS

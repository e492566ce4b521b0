"""An opening where a seam ends: its two edges are turned in beyond a mark, and nothing is cut."""

from __future__ import annotations

from collections.abc import Iterable
from typing import Final

from advisor.knowledge import nouns
from advisor.project.garment import Seam
from advisor.project.headwords import the_words

PLACKET, OPENING = "placket", "opening"
SEAMS: Final = frozenset({"seam"})
"""Kinds of place that may end in an opening."""


def ends_a_seam(seam: Seam, seams: Iterable[Seam]) -> bool:
    """Whether an opening is the end of a seam that is called alike and joins the same cloth.

    Its edge is said to be turned: nobody lays a strip along it. One that holds a second cloth is
    faced with that. One whose two edges are told as hemmed ends any seam of its cloth.
    """
    words = the_words(seam.name)
    cloths = set(seam.cloths())
    if hemmed_opening(seam):
        return any(s.place in SEAMS and set(s.cloths()) == cloths for s in seams)
    turned = seam.place == PLACKET and seam.facts.get("edge") == "turned" and len(cloths) == 1
    if not turned or words[-1:] != (OPENING,) or (nouns.SLITS | {"slash"}) & set(words):
        return False
    stem = words[:-1]
    named = (stem, (*stem, "seam"))
    return any(
        s.place in SEAMS and the_words(s.name) in named and set(s.cloths()) == cloths for s in seams
    )


def hemmed_opening(seam: Seam) -> bool:
    """Whether two edges of an opening are narrowly hemmed, which is no hem of the garment.

    It lies upright, is levelled with nothing, and is finished before what lies above it is sewn.
    """
    hemmed = seam.facts.get("edge") == "hem" and len(seam.cloths()) == 1 and seam.making.times > 1
    words = the_words(seam.name)
    return (
        hemmed
        and words[-1:] == (OPENING,)
        and not (nouns.SLITS | nouns.NO_UPRIGHT_OPENING) & set(words)
    )

"""Pockets that open between the two edges of a seam, and the bags told apart from them."""

from __future__ import annotations

from collections.abc import Iterable
from typing import Final

from advisor.project.garment import Seam
from advisor.project.placing import singular_words

POCKET, BAG, IN_SEAM = "set-in-pocket", "bag", "in-seam-pocket"
SEAM_BAG: Final = "seam-bag"
"""The role of such a bag."""
LIES_IN: Final = frozenset({"side", "seam", "inseam", "sideseam"})
"""Words of a pocket that opens in a seam."""
ELSEWHERE: Final = frozenset({"slant", "slanted", "slash", "welt", "jetted", "zip", "patch"})


def opens_in_a_seam(seam: Seam) -> bool:
    """Whether a pocket opens between the two edges of a seam: no edge of it is turned."""
    words = set(singular_words(seam.name))
    plain = seam.facts.get("edge") != "turned" and seam.method in ("", IN_SEAM)
    in_seam = plain and bool(words & LIES_IN) and not words & (ELSEWHERE | {BAG})
    return seam.place == POCKET and in_seam


def is_bag_of_one(seam: Seam, seams: Iterable[Seam]) -> bool:
    """Whether it is the bag of such pockets, told apart from their openings."""
    bag = seam.place == POCKET and BAG in singular_words(seam.name) and not seam.method
    openings = [s for s in seams if s.place == POCKET and BAG not in singular_words(s.name)]
    return bag and bool(openings) and all(map(opens_in_a_seam, openings))

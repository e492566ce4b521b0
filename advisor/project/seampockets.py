"""Pockets that open between the two edges of a seam, and the bags told apart from them."""

from __future__ import annotations

from collections.abc import Iterable
from typing import Final

from advisor.knowledge import nouns
from advisor.project.garment import Seam
from advisor.project.headwords import the_words as singular_words

POCKET, BAG, IN_SEAM = "set-in-pocket", "bag", "in-seam-pocket"
SEAM_BAG: Final = "seam-bag"
"""The role of such a bag."""


def opens_in_a_seam(seam: Seam) -> bool:
    """Whether a pocket opens between the two edges of a seam: no edge of it is turned.

    So does one of which the place says that its bag is sewn to a piece of another cloth.
    """
    words = set(singular_words(seam.name))
    plain = seam.facts.get("edge") != "turned" and seam.method in ("", IN_SEAM)
    in_seam = plain and bool(words & nouns.IN_A_SIDE) and not words & (nouns.WELTED | {BAG})
    return seam.place == POCKET and (in_seam or (plain and _joins_its_bag(seam)))


def _joins_its_bag(seam: Seam) -> bool:
    """Whether it is the seam by which a bag hangs on an edge, and not the outline of the bag."""
    words = singular_words(seam.name)
    onto = BAG in words and words[words.index(BAG) + 1 :][:1] == ("to",)
    return onto and len(set(seam.cloths())) > 1 and not nouns.WELTED & set(words)


def is_bag_of_one(seam: Seam, seams: Iterable[Seam]) -> bool:
    """Whether it is the bag of such pockets, told apart from their openings."""
    bag = seam.place == POCKET and BAG in singular_words(seam.name) and not seam.method
    others = [s for s in seams if s.place == POCKET and s.name != seam.name]
    openings = [s for s in others if BAG not in singular_words(s.name) or _joins_its_bag(s)]
    own = bag and not _joins_its_bag(seam)
    return own and bool(openings) and all(map(opens_in_a_seam, openings))

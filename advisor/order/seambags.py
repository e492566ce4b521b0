"""The bag of a pocket that opens in a seam: it is closed by the run that closes the seam."""

from __future__ import annotations

from collections.abc import Sequence
from typing import Final

from advisor.knowledge import nouns
from advisor.order.kinds import SeamPlace, crosses
from advisor.project.placing import singular_words
from advisor.project.seampockets import SEAM_BAG, opens_in_a_seam

ALONG: Final = frozenset({"side", "side-and-sleeve", "panel", "centre"})
"""Roles of seams in which a pocket may open."""


def run_round(bag: SeamPlace, places: Sequence[SeamPlace]) -> list[SeamPlace]:
    """The seams that are sewn in one run with a bag: of a skirt's and a bodice's the skirt's."""
    if bag.role.id != SEAM_BAG:
        return []
    openings = [p for p in places if opens_in_a_seam(p.seam)]
    seams = [p for p in places if p.kind.id == "seam" and p.role.id in ALONG]
    found = [p for p in seams if any(crosses(p, opening) for opening in openings)]
    skirts = [p for p in found if nouns.SKIRTED & set(singular_words(p.name))]
    return skirts or found


def runs_round_a_bag(seam: SeamPlace, places: Sequence[SeamPlace]) -> bool:
    """Whether a seam is sewn in one run round the bag of a pocket that opens in it."""
    return any(seam in run_round(bag, places) for bag in places)

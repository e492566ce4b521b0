"""What is fused before its seam is sewn: only to a neighbour that bears what the glue needs."""

from __future__ import annotations

from collections.abc import Callable, Iterable
from itertools import pairwise
from typing import Final

from advisor.claims.speakers import HOTTEST, Said, is_heat_limit
from advisor.knowledge.model import LIMIT_ASPECT
from advisor.project.garment import Seam

GLUES: Final = ("fusible", "low-temperature fusible")


def borne_apart(
    seam: Seam, said: Said, lid: Callable[[str], float], kind: Callable[[str], str]
) -> bool:
    """Whether what is pressed before the seam bears that; what is no glue is pressed as itself.

    Args:
        seam: where it lies.
        said: its need of heat.
        lid: what a cloth bears of an iron, °C.
        kind: the kind of entry that a cloth is.
    """
    names, claim = [use.cloth for use in seam.uses], said.claim
    pairs = (*pairwise(names), *pairwise(reversed(names)))
    beside = {o for one, o in pairs if one in said.cloths and kind(one) in GLUES} - said.cloths
    if not beside or claim.aspect != LIMIT_ASPECT or claim.span is None:
        return True
    return any(lid(name) >= claim.span[0] for name in beside)


def lowest_lid(words: Iterable[Said]) -> float:
    """The lowest iron limit among some words, °C."""
    lids = [s.claim.span[1] for s in words if is_heat_limit(s.claim) and s.claim.span]
    return min(lids, default=HOTTEST)

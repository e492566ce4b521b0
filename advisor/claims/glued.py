"""What is fused before its seam is sewn: only to a neighbour that bears what the glue needs."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Sequence
from itertools import pairwise
from typing import Final

from advisor.claims.asking import LayerAsker
from advisor.claims.speakers import (
    HEAT_ASPECTS,
    HOTTEST,
    Said,
    cloth_says,
    held_back,
    is_heat_limit,
)
from advisor.knowledge.model import COLD, LIMIT_ASPECT, Entry, Knowledge
from advisor.project.garment import Cloth, Seam

MOISTURE: Final = "press.moisture"
GLUES: Final = ("fusible", "low-temperature fusible")
STIFFENS: Final = frozenset({*GLUES, "sew-in", "canvas"})
"""Kinds of notion that are cut out as cloths are, and lie on their piece before any seam."""


def borne_apart(
    seam: Seam, said: Said, lid: Callable[[str, str], float], kind: Callable[[str], str]
) -> bool:
    """Whether what is pressed before the seam bears that; what is no glue is pressed as itself.

    Args:
        seam: where it lies.
        said: its need of heat.
        lid: what a cloth bears of an iron, °C, as moist as a glue needs it.
        kind: the kind of entry that a cloth is.
    """
    names, claim = [use.cloth for use in seam.uses], said.claim
    pairs = (*pairwise(names), *pairwise(reversed(names)))
    beside = {o for one, o in pairs if one in said.cloths and kind(one) in GLUES} - said.cloths
    if not beside or claim.aspect != LIMIT_ASPECT or claim.span is None:
        return True
    return any(lid(name, glue) >= claim.span[0] for name in beside for glue in said.cloths)


def words_of(cloth: Cloth, asker: LayerAsker, knowledge: Knowledge) -> Iterator[Said]:
    """What a cloth, its fibres and the rules about it say of the iron, wherever it lies."""
    yield from cloth_says(cloth, knowledge)
    for rule in asker.rules():
        heard = [c for c in rule.claims if c.aspect in HEAT_ASPECTS]
        if rule.shape != "layer" or "seam" in rule.parts or not heard:
            continue
        if asker.base(rule.parts["layer"], cloth.name):
            held = (held_back(claim, knowledge.aspects[claim.aspect]) for claim in heard)
            yield from (Said(cloth.name, c, (), False, frozenset((cloth.name,))) for c in held if c)


def lowest_lid(words: Sequence[Said], glue: Entry) -> float:
    """The lowest iron limit among some words, °C; no heat where they bar a glue's moisture."""
    wet = [c.span[0] for c in glue.claims if c.aspect == MOISTURE and c.span]
    own = [s.claim for s in words if s.claim.aspect == MOISTURE and s.claim.guards]
    if any(claim.span and claim.span[1] < max(wet, default=0.0) for claim in own):
        return COLD
    lids = [s.claim.span[1] for s in words if is_heat_limit(s.claim) and s.claim.span]
    return min(lids, default=HOTTEST)

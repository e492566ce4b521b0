"""Levels of traits that a phrase raises: by what is laid on the cloth, by stretch, by a pattern."""

from __future__ import annotations

from advisor.knowledge.model import Entry, Knowledge
from advisor.project.phrases.lexicon import DIRECTED, STRETCH
from advisor.project.phrases.tokens import singulars

Levels = tuple[int, int]
_DIRECTED = singulars(DIRECTED)
_STRETCH = singulars(STRETCH)
_BOTH_WAYS = frozenset({"4", "four", "4way"})


def traits_of(
    entry: Entry, laid: list[Entry], words: list[str], knowledge: Knowledge
) -> dict[str, Levels]:
    """Every level that is not the entry's own; never a milder one."""
    levels: dict[str, Levels] = {}
    for other in laid:
        for trait, (low, high) in other.traits.items():
            if trait in _NO_GUARD:
                continue
            own = levels.get(trait, entry.traits.get(trait, (0, 0)))
            levels[trait] = (max(own[0], low), max(own[1], high))
    if any(word in _STRETCH for word in words) and "stretch" in knowledge.traits:
        _raise(levels, entry, "stretch", (1, len(knowledge.traits["stretch"]) - 1))
        if any(word in _BOTH_WAYS for word in words):
            _raise(levels, entry, "stretch", (2, len(knowledge.traits["stretch"]) - 1))
    if any(word in _DIRECTED for word in words) and "one way" in knowledge.traits:
        _raise(levels, entry, "one way", (0, 1))
    return {
        trait: pair for trait, pair in levels.items() if pair != entry.traits.get(trait, (0, 0))
    }


_NO_GUARD = frozenset({"stiffness"})
"""Traits that are a manner and no danger; the ground's own stays."""


def _raise(levels: dict[str, Levels], entry: Entry, trait: str, to: Levels) -> None:
    low, high = levels.get(trait, entry.traits.get(trait, (0, 0)))
    if low < to[0] or high < to[1]:
        levels[trait] = (max(low, to[0]), max(high, to[1]))

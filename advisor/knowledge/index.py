"""Which rules are worth asking about a garment: those that name nothing which it has not.

A rule about velvet is no business of a garment without velvet. Each rule is filed under one word
that its condition cannot do without, so that knowledge may grow without slowing an answer.
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence
from typing import Any, Generic, Protocol, TypeVar


class Conditioned(Protocol):
    """Whatever has a condition: the shape that it is asked in, and its tree by shape."""

    @property
    def shape(self) -> str:
        """Of what it is asked: some layer, every layer, a pair of layers, the seam."""

    @property
    def parts(self) -> Mapping[str, Any]:
        """The condition's tree by shape."""


R = TypeVar("R", bound=Conditioned)

NARROWEST_FIRST = ("fabric", "notion", "family", "kind", "weave", "structure")
"""Facts of a layer that are one known word, those that few layers share first."""


class RuleIndex(Generic[R]):
    """Rules by a word that they need; one that needs none is always asked."""

    def __init__(self, rules: Sequence[R]) -> None:
        self.rules = rules
        self.always: list[int] = []
        self.by_word: dict[tuple[str, str], list[int]] = {}
        for i, rule in enumerate(rules):
            needed = _needed(rule)
            if needed is None:
                self.always.append(i)
                continue
            key, words = needed
            for word in words:
                self.by_word.setdefault((key, word), []).append(i)

    def worth_asking(self, layers: Iterable[dict[str, str]]) -> list[R]:
        """The rules, in their order, that the words of some layers do not already rule out."""
        found = set(self.always)
        for key, word in {(key, words.get(key, "")) for words in layers for key in NARROWEST_FIRST}:
            found.update(self.by_word.get((key, word), ()))
        return [self.rules[i] for i in sorted(found)]


def _needed(rule: Conditioned) -> tuple[str, list[str]] | None:
    """The narrowest word that some layer has to have for a rule to hold at all."""
    if rule.shape == "seam":
        return None
    part = rule.parts[rule.shape]
    trees = part if "pair" in rule.shape else [part]
    leaves = [leaf for tree in trees for leaf in _certain(tree)]
    found = [leaf for leaf in leaves if leaf[0] == "word" and leaf[1] in NARROWEST_FIRST]
    best = min(found, key=lambda leaf: NARROWEST_FIRST.index(leaf[1]), default=None)
    return None if best is None else (best[1], best[2])


def _certain(tree: list[Any]) -> list[list[Any]]:
    """The leaves that all have to hold."""
    if tree[0] == "all":
        return [leaf for part in tree[1:] for leaf in _certain(part)]
    return [tree]

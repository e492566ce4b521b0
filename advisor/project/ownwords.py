"""Words of a place's name that only say of which cloth it is: `quilt shoulder`, of a cloth `quilt`.

A maker calls a cloth after what it is for, and its places after the cloth. Such a word says what
is made there only where it is the head of the name (`neck rib`), part of a longer word of the
trade (`pocket bag`), or where the seam joins that cloth to another (`collar seam`). What a lining
or a facing is called after is its role, which stays.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence

from advisor.knowledge import nouns
from advisor.knowledge.model import Entry

SEAM = ("seam",)
Span = tuple[int, int]


def own_spans(
    words: tuple[str, ...], names: Mapping[tuple[str, ...], str], cloths: Sequence[str]
) -> list[Span]:
    """Where the words of a name are those of a cloth of its place, with something behind them.

    Args:
        words: the name of the place.
        names: the words of each cloth that lies there, with its name.
        cloths: all cloths of the place.
    """
    found = []
    for called, name in names.items():
        size = len(called)
        for at in range(len(words) - size):
            here = words[at : at + size] == called and not nouns.OF_LAYERS & set(called)
            if here and not (set(cloths) != {name} and _joins(words[at + size :])):
                found.append((at, at + size))
    return found


def _joins(rest: tuple[str, ...]) -> bool:
    """Whether what follows a word says that its piece is sewn to another there."""
    return rest == SEAM or rest[:1] == ("to",)


def cloths_among(names: Sequence[str], about: Mapping[str, Entry]) -> list[str]:
    """The cloths among the layers of a place; a notion is called after what it is."""
    return [name for name in names if name in about and about[name].kind == "cloth"]


def inside(span: Span, spans: Sequence[Span]) -> bool:
    """Whether a word of the trade is nothing but the name of a cloth."""
    return any(low <= span[0] and span[1] <= high for low, high in spans)


def by_itself(words: tuple[str, ...], spans: Sequence[Span]) -> bool:
    """Whether a name says no more than that a cloth is joined to itself there."""
    return any(words[high:] == SEAM for _, high in spans)


def without(words: tuple[str, ...], spans: Sequence[Span]) -> tuple[str, ...]:
    """The words that are left of a name without those of its cloths."""
    dropped = {i for low, high in spans for i in range(low, high)}
    return tuple(word for i, word in enumerate(words) if i not in dropped)

"""The head of a place's name: what it is, and not what it lies beside or on."""

from __future__ import annotations

from functools import lru_cache
from itertools import pairwise

from advisor.knowledge import nouns
from advisor.knowledge.places import plain_word


def head_of(words: tuple[str, ...]) -> tuple[str, ...]:
    """What a name is of, without what it has or lies beside or on: a seam below a zip is a seam."""
    pairs = enumerate(pairwise(words), start=1)
    at = (i for i, (a, b) in pairs if b in nouns.BESIDE or (b == "on" and a not in nouns.BEFORE_ON))
    return words[: next(at, len(words))]


@lru_cache(maxsize=4096)
def the_words(name: str) -> tuple[str, ...]:
    """The words of a name, each as one of it and as the first that means the same; no numbers."""
    plain = "".join(c if c.isalnum() else " " for c in plain_word(name))
    words = (word for word in plain.split() if not word.isdigit())
    return tuple(same for word in words for same in _single(word).split())


def speaks_of(name: str, group: frozenset[str]) -> bool:
    """Whether a name holds a word of a group."""
    return not group.isdisjoint(the_words(name))


def _single(word: str) -> str:
    if word in nouns.SAME:
        return nouns.SAME[word]
    plural = len(word) > 3 and word.endswith("s") and not word.endswith("ss")
    many = 2 if word.endswith(("ches", "shes", "xes", "sses")) else int(plural)
    one = word[: len(word) - many]
    return nouns.SAME.get(one, one)

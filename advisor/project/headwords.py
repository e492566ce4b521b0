"""The head of a place's name: what it is, and not what it lies beside or on."""

from __future__ import annotations

from functools import lru_cache
from itertools import pairwise

from advisor.knowledge.places import plain_word

BESIDE = frozenset({"with", "below", "above", "beside", "behind"})
"""Words of a name after which it speaks of something else than the place itself."""
NOT_ALONE = frozenset({"sewn", "set", "put", "cut", "laid", "stitched", "stretched", "on"})
"""Words that belong to an "on" behind them: a sewn-on pocket is a pocket."""


def head_of(words: tuple[str, ...]) -> tuple[str, ...]:
    """What a name is of, without what it has or lies beside or on: a seam below a zip is a seam."""
    pairs = enumerate(pairwise(words), start=1)
    at = (i for i, (a, b) in pairs if b in BESIDE or (b == "on" and a not in NOT_ALONE))
    return words[: next(at, len(words))]


@lru_cache(maxsize=4096)
def the_words(name: str) -> tuple[str, ...]:
    """The words of a name, each as one of it, as far as sewing words need it; no numbers."""
    plain = "".join(c if c.isalnum() else " " for c in plain_word(name))
    return tuple(_single(word) for word in plain.split() if not word.isdigit())


def _single(word: str) -> str:
    if word.endswith(("ches", "shes", "xes", "sses")):
        return word[:-2]
    plural = len(word) > 3 and word.endswith("s") and not word.endswith("ss")
    return word[:-1] if plural else word

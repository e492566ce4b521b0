"""The head of a place's name: what it is, and not what it lies beside or on."""

from __future__ import annotations

from itertools import pairwise

BESIDE = frozenset({"with", "below", "above", "beside", "behind"})
"""Words of a name after which it speaks of something else than the place itself."""
NOT_ALONE = frozenset({"sewn", "set", "put", "cut", "laid", "stitched", "stretched", "on"})
"""Words that belong to an "on" behind them: a sewn-on pocket is a pocket."""


def head_of(words: tuple[str, ...]) -> tuple[str, ...]:
    """What a name is of, without what it has or lies beside or on: a seam below a zip is a seam."""
    pairs = enumerate(pairwise(words), start=1)
    at = (i for i, (a, b) in pairs if b in BESIDE or (b == "on" and a not in NOT_ALONE))
    return words[: next(at, len(words))]

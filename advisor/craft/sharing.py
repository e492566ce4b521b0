"""The fewest threads whose colours are near enough to all cloths: a smallest cover of a set.

Each cloth takes one thread no further from it than `near` by CIEDE2000 (`sharma-2005`). Of covers
as small, the one that buys least, then the one whose threads lie nearest, a lighter thread counted
as `LIGHTER` further (`derived`; the weight is an `estimate`). Up to `EXACT` cloths of unlike
colour the cover is the smallest there is, searched by dynamic programming over sets; beyond, the
thread that suits most of the rest is taken in turn, which may be more than the fewest.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from functools import cache
from typing import Final

from msgspec import Struct

from advisor.craft.colour import Lab, Match, match

EXACT: Final = 12
#: What a lighter thread is put behind a darker one of the same difference (`estimate`).
LIGHTER: Final = 0.5


class Thread(Struct, frozen=True):
    """A thread that may be taken: a reel at hand, or one bought to match a colour."""

    name: str
    lab: Lab
    bought: bool = False


Cost = tuple[int, int, float]
"""How many threads, how many of them are bought, and how far they lie."""


def fewest(
    cloths: Mapping[str, Lab],
    threads: Sequence[Thread],
    near: float,
    barred: frozenset[tuple[str, str]] = frozenset(),
) -> dict[str, Thread]:
    """The thread of each cloth, so that as few threads as may be are used.

    Args:
        cloths: the colour of each cloth.
        threads: what may be taken; what is bought to match a colour may always be.
        near: the largest difference that is let pass; what is bought to match has none.
        barred: pairs of cloth and thread that do not go together for another reason.
    """
    names = list(cloths)
    fits = [
        {
            i: found
            for i, name in enumerate(names)
            if (name, one.name) not in barred
            and (found := match(one.name, one.lab, cloths[name])).difference <= near
        }
        for one in threads
    ]
    picked = _exact(len(names), fits, threads) if len(names) <= EXACT else _greedy(names, fits)
    return {
        name: threads[min((k for k in picked if i in fits[k]), key=lambda k: _far(fits[k][i]))]
        for i, name in enumerate(names)
        if any(i in fits[k] for k in picked)
    }


def _far(found: Match) -> float:
    return found.difference + (0.0 if found.darker or found.difference == 0 else LIGHTER)


def _exact(
    number: int, fits: Sequence[Mapping[int, Match]], threads: Sequence[Thread]
) -> tuple[int, ...]:
    """The threads of the cheapest cover, each cloth once."""

    @cache
    def cheapest(left: int) -> tuple[Cost, tuple[int, ...]]:
        if not left:
            return (0, 0, 0.0), ()
        first = (left & -left).bit_length() - 1
        best: tuple[Cost, tuple[int, ...]] | None = None
        for k, found in enumerate(fits):
            if first not in found:
                continue
            rest = left & ~sum(1 << i for i in found)
            far = sum(_far(one) for i, one in found.items() if left >> i & 1)
            (count, bought, cost), others = cheapest(rest)
            whole = ((count + 1, bought + threads[k].bought, cost + far), (k, *others))
            if best is None or whole < best:
                best = whole
        return best or cheapest(left & (left - 1))  # no thread suits this one

    return cheapest((1 << number) - 1)[1]


def _greedy(names: Sequence[str], fits: Sequence[Mapping[int, Match]]) -> tuple[int, ...]:
    """The thread that suits most of what is left, in turn."""
    left = set(range(len(names)))
    picked: list[int] = []
    while left:
        k = max(
            range(len(fits)),
            key=lambda k: (len(left & set(fits[k])), -sum(_far(m) for m in fits[k].values())),
            default=None,
        )
        if k is None or not left & set(fits[k]):
            break
        picked.append(k)
        left -= set(fits[k])
    return tuple(picked)

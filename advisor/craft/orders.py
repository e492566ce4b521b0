"""In which order pieces are laid so that the strip is short: many tried, the better ones changed.

Whoever places the pieces is given an order and tells how long the strip comes out; an order is
kept while no shorter one is found. The same lot always gets the same orders, so that two runs
agree.
"""

from __future__ import annotations

import itertools
import math
import random
from collections.abc import Callable, Iterable, Iterator
from typing import Final, Protocol, Self, TypeVar

#: Up to so many pieces every order is tried.
ALL_ORDERS: Final = 5
#: Above that, so many orders for few pieces, fewer for many, whose placing takes longer.
MOST_ORDERS: Final = 500
EFFORT: Final = 100_000
#: After so many small changes an order is shuffled anew.
SHUFFLE: Final = 50


class Sized(Protocol):
    """What an order is made by."""

    @property
    def width(self) -> int:
        """Across the strip."""

    @property
    def length(self) -> int:
        """Along the strip."""

    @property
    def at_edge(self) -> bool:
        """Whether it must lie at the edge."""

    def lying(self) -> tuple[Self, ...]:
        """The piece held to each of its ways; itself where it has but one."""


SORTED: Final[tuple[Callable[[Sized], tuple[int, ...]], ...]] = (
    lambda i: (-i.width, -i.length),
    lambda i: (-i.width * i.length, -i.length),
    lambda i: (-i.width - i.length, -i.length),
    lambda i: (not i.at_edge, -i.length, -i.width),
)
"""What pieces are sorted by for the first orders: wide, large, long and wide, at the edge."""

Item = TypeVar("Item", bound=Sized)
Spots = TypeVar("Spots")
Place = Callable[[tuple[Item, ...], int | None], tuple[int, Spots] | None]
"""An order and a length to stay below (or None): the length it takes and where all lie."""


def shortest(
    items: tuple[Item, ...],
    place: Place[Item, Spots],
    floor: int,
    effort: int = EFFORT,
    most: int = MOST_ORDERS,
) -> tuple[int, Spots]:
    """The shortest strip found, ended early at `floor`, which nothing can beat."""
    tries = max(len(SORTED) + 1, effort // len(items) ** 2)
    best = _tried(itertools.islice(first_orders(items), tries), place, floor)
    assert best is not None
    if best[0] <= floor or _count(items) <= tries:
        return best
    return _improved(items, place, floor, best, min(most, tries))


def _count(items: tuple[Item, ...]) -> float:
    """How many orders there are, lying every way."""
    if len(items) > ALL_ORDERS:
        return math.inf
    ways = math.prod(len(item.lying()) for item in items)
    return len(SORTED) + 1 + ways * math.factorial(len(items))


def _tried(
    orders: Iterable[tuple[Item, ...]], place: Place[Item, Spots], floor: int
) -> tuple[int, Spots] | None:
    best: tuple[int, Spots] | None = None
    for order in orders:
        best = place(order, None if best is None else best[0]) or best
        if best is not None and best[0] <= floor:
            break
    return best


def first_orders(items: tuple[Item, ...]) -> Iterator[tuple[Item, ...]]:
    """Long, wide or large first, edges first; of a few all orders, lying every way."""
    yield items
    for by in SORTED:
        yield tuple(sorted(items, key=by))
    if len(items) <= ALL_ORDERS:
        for lying in itertools.product(*(item.lying() for item in items)):
            yield from dict.fromkeys(itertools.permutations(lying))


def _improved(
    items: tuple[Item, ...],
    place: Place[Item, Spots],
    floor: int,
    best: tuple[int, Spots],
    tries: int,
) -> tuple[int, Spots]:
    """Change an order a little, and keep what is not worse."""
    chance = random.Random(0)
    firsts = itertools.islice(first_orders(items), len(SORTED) + 1)
    top, start = min(((_certain(place, o)[0], o) for o in firsts), key=lambda t: t[0])
    order = list(start)
    for turn in range(1, tries + 1):
        anew = turn % SHUFFLE == 0
        tried = _changed(order, chance, anew)
        laid = place(tuple(tried), None if anew else top + 1)
        if laid is None:
            continue
        order, top = tried, laid[0]
        if laid[0] < best[0]:
            best = laid
        if best[0] <= floor:
            break
    return best


def _certain(place: Place[Item, Spots], order: tuple[Item, ...]) -> tuple[int, Spots]:
    laid = place(order, None)
    assert laid is not None
    return laid


def _changed(order: list[Item], chance: random.Random, anew: bool) -> list[Item]:
    """Two pieces change places, one goes elsewhere, or one lies the other way."""
    tried = list(order)
    if anew:
        chance.shuffle(tried)
    i, j = chance.sample(range(len(tried)), 2)
    way = chance.randrange(3)
    if way == 0:
        tried[i], tried[j] = tried[j], tried[i]
    elif way == 1:
        tried.insert(j, tried.pop(i))
    else:
        tried[i] = chance.choice(tried[i].lying())
        tried.insert(j, tried.pop(i))
    return tried

"""What must come before what, as a graph over step ids.

Sets of steps are bit masks over the plain order, so "is everything before it done" is one
operation. A cycle is found as the smallest one there is, by breadth-first search from every
step; the reduction leaves out precedences that follow from others (transitive reduction of a
graph without cycles, which is unique).
"""

from __future__ import annotations

import heapq
from collections import deque
from collections.abc import Iterable, Iterator, Mapping, Sequence
from typing import ClassVar

from msgspec import Struct

from advisor.errors import AdvisorError, Exit
from advisor.order.steps import Precedence, Step

_RANK = {"must": 0, "should": 1, "may": 2}


class CycleError(AdvisorError):
    """The steps cannot be ordered; `cycle` holds the fewest precedences that chase each other."""

    exit: ClassVar[Exit] = Exit.CONFLICT

    def __init__(self, cycle: tuple[Precedence, ...]) -> None:
        self.cycle = cycle
        names = " before ".join([*(item.before for item in cycle), cycle[0].before])
        super().__init__(f"no order can satisfy: {names}")


class Graph(Struct, frozen=True):
    """Steps in their plain order with everything that is forced among them.

    `steps[k]` has bit `1 << k`; `before[k]` and `after[k]` are the masks of all steps that are
    forced before and after it. A step never has a lower bit than one forced before it.
    """

    steps: tuple[Step, ...]
    precedences: tuple[Precedence, ...]
    index: dict[str, int]
    before: tuple[int, ...]
    after: tuple[int, ...]

    def ids(self, mask: int) -> tuple[str, ...]:
        """The ids of the steps in a mask, in plain order."""
        return tuple(self.steps[k].id for k in bits(mask))

    def forced_before(self, step: str) -> tuple[str, ...]:
        """Every step that must be done before this one, directly or through others."""
        return self.ids(self.before[self.index[step]])

    def forced_after(self, step: str) -> tuple[str, ...]:
        """Every step that must wait for this one, directly or through others."""
        return self.ids(self.after[self.index[step]])

    def reduced(self) -> tuple[Precedence, ...]:
        """The precedences that do not follow from others; several reasons for one are kept."""
        return tuple(
            item
            for item in self.precedences
            if not self.after[self.index[item.before]] & self.before[self.index[item.after]]
        )


def build(steps: Iterable[Step], precedences: Iterable[Precedence]) -> Graph:
    """The graph of these steps, whatever order they are given in.

    Raises ValueError for a repeated id or a precedence that names an unknown step, and
    CycleError when no order exists.
    """
    byid = _unique(steps)
    kept = _known(byid, precedences)
    order = _plain(byid, kept)
    index = {step.id: k for k, step in enumerate(order)}
    before = [0] * len(order)
    after = [0] * len(order)
    pairs = sorted({(index[item.before], index[item.after]) for item in kept})
    for j, k in sorted(pairs, key=lambda pair: pair[1]):  # a step's own comes before it is used
        before[k] |= before[j] | 1 << j
    for j, k in reversed(pairs):
        after[j] |= after[k] | 1 << k
    return Graph(tuple(order), kept, index, tuple(before), tuple(after))


def settle(
    steps: Iterable[Step],
    precedences: Iterable[Precedence],
    weight: Mapping[Precedence, int] | None = None,
) -> tuple[tuple[Precedence, ...], tuple[Precedence, ...]]:
    """The precedences that can hold together, and the weaker ones given up for it.

    Every `must` is kept; then each `should`, then each `may`, unless it would close a cycle.
    Among equals the lower `weight` goes first, then the names of the steps.
    Raises CycleError when the musts alone cannot be satisfied.
    """
    byid = _unique(steps)
    weights = weight or {}
    items = sorted(
        _known(byid, precedences),
        key=lambda item: (_RANK[item.strength], weights.get(item, 0), _key(item)),
    )
    kept = [item for item in items if item.strength == "must"]
    cycle = smallest_cycle(kept)
    if cycle:
        raise CycleError(cycle)
    reach = _Reach(byid, kept)
    given_up = []
    for item in items[len(kept) :]:
        if reach.holds(item.after, item.before):
            given_up.append(item)
        else:
            kept.append(item)
            reach.add(item)
    return tuple(kept), tuple(given_up)


class _Reach:
    """Which steps are forced before which, kept up to date as precedences are added."""

    def __init__(self, names: Iterable[str], kept: Iterable[Precedence]) -> None:
        self.index = {name: k for k, name in enumerate(names)}
        self.later = [1 << k for k in range(len(self.index))]
        for item in kept:
            self.add(item)

    def holds(self, before: str, after: str) -> bool:
        """Whether one step is the other, or is forced before it."""
        return bool(self.later[self.index[before]] >> self.index[after] & 1)

    def add(self, item: Precedence) -> None:
        """Take a precedence in; it may not close a cycle."""
        first, second = self.index[item.before], self.index[item.after]
        if not self.later[first] >> second & 1:
            gained = self.later[second]
            for k, mask in enumerate(self.later):
                if mask >> first & 1:
                    self.later[k] = mask | gained


def smallest_cycle(precedences: Iterable[Precedence]) -> tuple[Precedence, ...]:
    """The fewest precedences that chase each other, ties by id; empty when there is no cycle."""
    items = _knotted(sorted(precedences, key=_key))
    best: tuple[Precedence, ...] = ()
    for item in items:
        back = () if item.before == item.after else _shortest(items, item.after, item.before)
        if item.before == item.after or back:
            found = (item, *back)
            if not best or len(found) < len(best):
                best = found
    return best


def _knotted(items: list[Precedence]) -> list[Precedence]:
    """The precedences left when steps that wait for nothing are taken away, again and again.

    Every cycle is among them, and where there is none nothing is left, so that the common case
    needs no search.
    """
    waits: dict[str, int] = {}
    leaving: dict[str, list[str]] = {}
    for item in items:
        waits.setdefault(item.before, 0)
        waits[item.after] = waits.get(item.after, 0) + 1
        leaving.setdefault(item.before, []).append(item.after)
    ready = [name for name, count in waits.items() if not count]
    gone = set(ready)
    while ready:
        for name in leaving.get(ready.pop(), ()):
            waits[name] -= 1
            if not waits[name]:
                gone.add(name)
                ready.append(name)
    return [item for item in items if item.before not in gone]


def bits(mask: int) -> Iterator[int]:
    """The positions of the set bits, lowest first."""
    while mask:
        low = mask & -mask
        yield low.bit_length() - 1
        mask ^= low


def _unique(steps: Iterable[Step]) -> dict[str, Step]:
    byid: dict[str, Step] = {}
    for step in sorted(steps, key=lambda step: (step.rank, step.id)):
        if step.id in byid:
            raise ValueError(f"two steps are called {step.id!r}")
        byid[step.id] = step
    return byid


def _known(byid: dict[str, Step], items: Iterable[Precedence]) -> tuple[Precedence, ...]:
    kept = tuple(sorted(set(items), key=_key))
    for item in kept:
        for name in (item.before, item.after):
            if name not in byid:
                raise ValueError(f"a precedence names {name!r}, which is not a step")
    return kept


def _plain(byid: dict[str, Step], items: Sequence[Precedence]) -> list[Step]:
    """The customary order: of the steps whose time has come, the lowest rank, then id."""
    later: dict[str, set[str]] = {name: set() for name in byid}
    waits = dict.fromkeys(byid, 0)
    for before, after in {(item.before, item.after) for item in items}:
        later[before].add(after)
        waits[after] += 1
    ready = [(step.rank, step.id) for step in byid.values() if not waits[step.id]]
    heapq.heapify(ready)
    order: list[Step] = []
    while ready:
        name = heapq.heappop(ready)[1]
        order.append(byid[name])
        for other in later[name]:
            waits[other] -= 1
            if not waits[other]:
                heapq.heappush(ready, (byid[other].rank, other))
    if len(order) < len(byid):
        raise CycleError(smallest_cycle(items))
    return order


def _shortest(items: Sequence[Precedence], start: str, goal: str) -> tuple[Precedence, ...]:
    """The fewest precedences that lead from one step to another; empty when none do."""
    leaving: dict[str, list[Precedence]] = {}
    for item in items:
        leaving.setdefault(item.before, []).append(item)
    came: dict[str, Precedence] = {}
    queue = deque([start])
    while queue and goal not in came:
        for item in leaving.get(queue.popleft(), ()):
            if item.after not in came and item.after != start:
                came[item.after] = item
                queue.append(item.after)
    chain: list[Precedence] = []
    at = goal
    while at in came:
        chain.append(came[at])
        at = came[at].before
    return tuple(reversed(chain))


def _key(item: Precedence) -> tuple[str, str, int, str, tuple[str, ...]]:
    return (item.before, item.after, _RANK[item.strength], item.why, item.sources)

"""The machines as one automaton and the iron as another, compiled for the search.

A family's state is what its stations hold and where the maker sits; a step's class is the
station and set-up it needs. `rest` is the exact price of finishing one family's steps from a
given state while the other family is ignored but every precedence is kept. The two families'
prices never share a change, so the sum of both rests never exceeds the true remaining price.
"""

from __future__ import annotations

from collections.abc import Callable, Hashable, Sequence
from dataclasses import dataclass
from typing import TypeVar

from advisor.order.costs import CostTable
from advisor.order.graph import Graph, bits
from advisor.order.steps import IronState, MachineState

T = TypeVar("T", bound=Hashable)
NONE = -1


@dataclass(frozen=True, slots=True)
class Needs:
    """What one family's steps ask for: classes, and the prices between them.

    `of[k]` is the class of step k or NONE; `station[c]` is the station of class c; `price[a][c]`
    is the seconds from class a to class c on the same station; `turn` is the seconds to turn
    to another station. `start` has the class on each station and then the seat.
    """

    of: tuple[int, ...]
    station: tuple[int, ...]
    price: tuple[tuple[int, ...], ...]
    turn: int
    start: tuple[int, ...]


def machine_needs(graph: Graph, table: CostTable, found: Sequence[MachineState]) -> Needs:
    """The machines' part of the steps; `found` is how the machines stand at the start."""
    wanted = [step.machine for step in graph.steps]
    names = sorted({state.machine for state in [*wanted, *found] if state is not None})
    spots = {name: k for k, name in enumerate(names)}
    of, station, price, first = _classes(
        wanted, found, lambda state: spots[state.machine], table.machine_seconds
    )
    start = [NONE] * len(names)
    for c in first:
        start[station[c]] = c
    seat = spots[found[-1].machine] if found and table.turn_seconds else NONE
    return Needs(of, station, price, table.turn_seconds, (*start, seat))


def iron_needs(graph: Graph, table: CostTable, found: IronState | None) -> Needs:
    """The iron's part of the steps; `found` is how the iron stands at the start."""
    before = [] if found is None else [found]
    of, station, price, first = _classes(
        [step.iron for step in graph.steps], before, lambda _: 0, table.iron_seconds
    )
    return Needs(of, station, price, 0, (first[0] if first else NONE, NONE))


def _classes(
    wanted: Sequence[T | None],
    found: Sequence[T],
    spot: Callable[[T], int],
    seconds: Callable[[T, T], int],
) -> tuple[tuple[int, ...], tuple[int, ...], tuple[tuple[int, ...], ...], tuple[int, ...]]:
    """Classes of states between which a change is free both ways, and their prices."""
    kinds: list[T] = []
    where: dict[T, int] = {}
    for state in sorted({s for s in [*wanted, *found] if s is not None}, key=repr):
        for c, kind in enumerate(kinds):
            same = spot(kind) == spot(state)
            if same and not seconds(kind, state) and not seconds(state, kind):
                where[state] = c
                break
        else:
            where[state] = len(kinds)
            kinds.append(state)
    price = tuple(tuple(seconds(a, b) if spot(a) == spot(b) else 0 for b in kinds) for a in kinds)
    of = tuple(NONE if state is None else where[state] for state in wanted)
    return of, tuple(spot(kind) for kind in kinds), price, tuple(where[f] for f in found)


class Family:
    """One family compiled: its moves, which steps cost nothing now, and its exact rest."""

    def __init__(self, needs: Needs, before: Sequence[int], budget: int) -> None:
        self.needs = needs
        self.mask = sum(1 << k for k, c in enumerate(needs.of) if c != NONE)
        self.before = [mask & self.mask for mask in before]
        self.budget = budget
        self.everything = (1 << len(needs.of)) - 1
        self.members = [0] * len(needs.station)
        for k, c in enumerate(needs.of):
            if c != NONE:
                self.members[c] |= 1 << k
        self._least = [_least_in(needs, c) for c in range(len(needs.station))]
        self._states: list[tuple[int, ...]] = []
        self._ids: dict[tuple[int, ...], int] = {}
        self._rows: list[list[tuple[int, int]] | None] = []
        self._free: list[int] = []
        self._rest: dict[tuple[int, int], int] = {}
        self.start = self._intern(needs.start)

    def row(self, state: int) -> list[tuple[int, int]]:
        """For each class, the state after setting up for it and the price in seconds."""
        row = self._rows[state]
        if row is None:
            row = [self._move(self._states[state], c) for c in range(len(self.members))]
            self._rows[state] = row
        return row

    def free(self, state: int) -> int:
        """The steps that cost nothing in this state and leave it as it is."""
        mask = self._free[state]
        if mask < 0:
            mask = self.everything & ~self.mask
            for c, (after, price) in enumerate(self.row(state)):
                if after == state and not price:
                    mask |= self.members[c]
            self._free[state] = mask
        return mask

    def rest(self, done: int, state: int) -> int:
        """The least seconds for this family's remaining steps, the other family ignored.

        Exact while the budget of remembered states lasts, afterwards a lower bound.
        """
        done &= self.mask
        free = self.free(state) & self.mask & ~done
        for k in bits(free):
            if not self.before[k] & ~done:
                done |= 1 << k
        if done == self.mask:
            return 0
        known = self._rest.get((done, state))
        if known is None:
            if len(self._rest) >= self.budget:
                return self._floor(done, state)
            known = self._explore(done, state)
            self._rest[done, state] = known
        return known

    def _explore(self, done: int, state: int) -> int:
        row = self.row(state)
        tries = []
        seen = 0
        of = self.needs.of
        for k in bits(self.mask & ~done):
            c = of[k]
            if not self.before[k] & ~done and not seen >> c & 1:
                seen |= 1 << c
                after, price = row[c]
                grown = done | 1 << k
                tries.append((price + self._floor(grown, after), price, grown, after))
        tries.sort()
        best = -1
        for floor, price, grown, after in tries:
            if 0 <= best <= floor:
                break
            total = price + self.rest(grown, after)
            if best < 0 or total < best:
                best = total
        return best

    def _floor(self, done: int, state: int) -> int:
        """Every set-up still needed is entered at least once, at its cheapest."""
        held = self._states[state]
        left = self.mask & ~done
        total = 0
        seats = 0
        spared = [0] * (len(held) - 1)
        for c, members in enumerate(self.members):
            if members & left:
                spot = self.needs.station[c]
                seats |= 1 << spot
                if held[spot] != c:
                    total += self._least[c]
                    if held[spot] == NONE and self._least[c] > spared[spot]:
                        spared[spot] = self._least[c]
        if self.needs.turn and seats:
            others = seats if held[-1] == NONE else seats & ~(1 << held[-1])
            turns = others.bit_count() - (held[-1] == NONE)
            total += self.needs.turn * turns
        return total - sum(spared)

    def _move(self, held: tuple[int, ...], c: int) -> tuple[int, int]:
        spot = self.needs.station[c]
        price = 0 if held[spot] == NONE else self.needs.price[held[spot]][c]
        seat = held[-1]
        if self.needs.turn:
            price += 0 if seat in (NONE, spot) else self.needs.turn
            seat = spot
        return self._intern((*held[:spot], c, *held[spot + 1 : -1], seat)), price

    def _intern(self, held: tuple[int, ...]) -> int:
        number = self._ids.get(held)
        if number is None:
            number = self._ids[held] = len(self._states)
            self._states.append(held)
            self._rows.append(None)
            self._free.append(-1)
        return number


def _least_in(needs: Needs, c: int) -> int:
    others = [a for a, spot in enumerate(needs.station) if spot == needs.station[c] and a != c]
    return min((needs.price[a][c] for a in others), default=0)

"""The machines as one automaton and the iron as another, compiled for the search.

A family's state is what its stations hold and where the maker sits; a step's class is the
station and set-up it needs. `rest` is the exact price of finishing one family's steps from a
given state while the other family is ignored but every precedence is kept. The two families'
prices never share a change, so the sum of both rests never exceeds the true remaining price.
For the same reason a family's rest is at least the sum of its parts' rests (threads, feet, …),
each of which has few states; that sum serves where the whole is too large to be worked out.
"""

from __future__ import annotations

from collections.abc import Sequence

from advisor.order.costs import CostTable
from advisor.order.graph import Graph, bits
from advisor.order.needs import (
    IRON_PARTS,
    MACHINE_PARTS,
    NONE,
    Needs,
    iron_needs,
    machine_needs,
)
from advisor.order.steps import IronState, MachineState


def machine_family(
    graph: Graph, table: CostTable, found: Sequence[MachineState], budget: int
) -> Family:
    """All machines and the seat, with `budget` states remembered in all and for each part."""
    needs = [machine_needs(graph, table, found, only) for only in MACHINE_PARTS]
    parts = [Family(need, graph.before, budget) for need in needs if need.matters]
    return Family(machine_needs(graph, table, found), graph.before, budget, parts)


def iron_family(graph: Graph, table: CostTable, found: IronState | None, budget: int) -> Family:
    """The iron, as `machine_family`."""
    needs = [iron_needs(graph, table, found, only) for only in IRON_PARTS]
    parts = [Family(need, graph.before, budget) for need in needs if need.matters]
    return Family(iron_needs(graph, table, found), graph.before, budget, parts)


class Family:
    """One family compiled: its moves, which steps cost nothing now, and its exact rest."""

    def __init__(
        self,
        needs: Needs,
        before: Sequence[int],
        budget: int,
        parts: Sequence[Family] = (),
    ) -> None:
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
        self._parts = parts
        self._held: list[tuple[int, ...]] = []
        self.start: int = self._intern(needs.start, tuple(part.start for part in parts))

    def row(self, state: int) -> list[tuple[int, int]]:
        """For each class, the state after setting up for it and the price in seconds."""
        row = self._rows[state]
        if row is None:
            row = [self._move(state, c) for c in range(len(self.members))]
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
        before = self.before
        while free:  # bit by bit, without a generator: nothing runs more often
            low = free & -free
            free ^= low
            if not before[low.bit_length() - 1] & ~done:
                done |= low
        if done == self.mask:
            return 0
        known = self._rest.get((done, state))
        if known is None:
            if len(self._rest) >= self.budget:
                return self._bound(done, state)
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

    def _bound(self, done: int, state: int) -> int:
        parts = zip(self._parts, self._held[state], strict=True)
        return max(self._floor(done, state), sum(part.rest(done, held) for part, held in parts))

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

    def _move(self, state: int, c: int) -> tuple[int, int]:
        held = self._states[state]
        spot = self.needs.station[c]
        price = 0 if held[spot] == NONE else self.needs.price[held[spot]][c]
        seat = held[-1]
        if self.needs.turn:
            price += 0 if seat in (NONE, spot) else self.needs.turn
            seat = spot
        member = self.members[c].bit_length() - 1
        parts = tuple(
            part.row(at)[part.needs.of[member]][0] if member >= 0 else at
            for part, at in zip(self._parts, self._held[state], strict=True)
        )
        return self._intern((*held[:spot], c, *held[spot + 1 : -1], seat), parts), price

    def _intern(self, held: tuple[int, ...], parts: tuple[int, ...]) -> int:
        number = self._ids.get(held)
        if number is None:
            number = self._ids[held] = len(self._states)
            self._states.append(held)
            self._held.append(parts)
            self._rows.append(None)
            self._free.append(-1)
        return number


def _least_in(needs: Needs, c: int) -> int:
    others = [a for a, spot in enumerate(needs.station) if spot == needs.station[c] and a != c]
    return min((needs.price[a][c] for a in others), default=0)

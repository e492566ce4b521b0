"""The search space: what is done, how the machines stand, how the iron stands.

Two things keep it small. **Free steps first**: a step whose time has come, that needs what is
set up already (or nothing), is done at once. That is always safe: take the cheapest way to go
on and move that step to its front. There it costs nothing and changes nothing; where it stood,
two changes become one, which by the triangle rule is no dearer; and nothing had to come before
it. This holds for each machine, the seat and the iron by itself, so it holds for their sum.
**One step for each set-up**: of the available steps that need the same machine and iron state,
only the first is tried, because the others are free right after it.
"""

from __future__ import annotations

from collections.abc import Iterator
from typing import NamedTuple

from advisor.order.families import Family
from advisor.order.graph import Graph, bits
from advisor.order.needs import NONE


class State(NamedTuple):
    """A point of the search: the mask of steps done, and the state of machines and iron."""

    done: int
    machine: int
    iron: int


class Move(NamedTuple):
    """One step that is not free: what it costs in seconds, and where it leads."""

    price: int
    step: int
    to: State


class Space:
    """All that can happen from a state, for one graph and its two families."""

    def __init__(self, graph: Graph, machine: Family, iron: Family) -> None:
        self.before = graph.before
        self.everything = (1 << len(graph.steps)) - 1
        self.machine = machine
        self.iron = iron
        pairs = list(zip(machine.needs.of, iron.needs.of, strict=True))
        self._kind = [sorted(set(pairs)).index(pair) for pair in pairs]
        self._kinds = sorted(set(pairs))

    def start(self) -> State:
        """Where the work begins, with the steps that cost nothing already done."""
        return self._settled(0, self.machine.start, self.iron.start)

    def rest(self, state: State) -> int:
        """A lower bound on the seconds still to be spent; it never falls short of zero."""
        done, machine, iron = state
        return self.machine.rest(done, machine) + self.iron.rest(done, iron)

    def moves(self, state: State) -> Iterator[Move]:
        """The ways to go on, one for each set-up that an available step asks for."""
        done, machine, iron = state
        machine_row, iron_row = self.machine.row(machine), self.iron.row(iron)
        before, kind_of, tried = self.before, self._kind, 0
        for k in bits(self.everything & ~done):
            kind = kind_of[k]
            if before[k] & ~done or tried >> kind & 1:
                continue
            tried |= 1 << kind
            needs_machine, needs_iron = self._kinds[kind]
            m, m_price = machine_row[needs_machine] if needs_machine != NONE else (machine, 0)
            i, i_price = iron_row[needs_iron] if needs_iron != NONE else (iron, 0)
            yield Move(m_price + i_price, k, self._settled(done | 1 << k, m, i))

    def sequence(self, start: State, moves: list[Move]) -> list[int]:
        """The steps of a path of moves, each followed by the free steps that it opened."""
        order = list(bits(start.done))
        done = start.done
        for move in moves:
            order.append(move.step)
            order.extend(bits(move.to.done & ~done & ~(1 << move.step)))
            done = move.to.done
        return order

    def _settled(self, done: int, machine: int, iron: int) -> State:
        # A step never has a lower bit than one forced before it, so one pass finds them all.
        free = self.machine.free(machine) & self.iron.free(iron) & ~done
        before = self.before
        for k in bits(free):
            if not before[k] & ~done:
                done |= 1 << k
        return State(done, machine, iron)

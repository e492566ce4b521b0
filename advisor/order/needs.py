"""What the steps ask of the machines and of the iron, boiled down to classes and prices.

Set-ups between which a change is free both ways are one class. The needs can be taken whole, or
for some parts of the price only (just the threads, just the feet): the parts add up to the
whole, and each alone is small.
"""

from __future__ import annotations

from collections.abc import Callable, Collection, Hashable, Iterable, Sequence
from typing import TypeVar

from msgspec import Struct

from advisor.order.costs import ChangedPart, CostTable
from advisor.order.graph import Graph
from advisor.order.steps import IronState, MachineState

T = TypeVar("T", bound=Hashable)
NONE = -1
TURN = "machine"

# Every word that a change can be made of, in groups that are priced apart. What goes up must
# be seen with what comes down, and one machine's threads are another's thread and bobbin.
MACHINE_PARTS = (
    ("thread", "threads"),
    ("bobbin",),
    ("needle",),
    ("foot",),
    ("plate",),
    ("stitch",),
    ("tension",),
    (TURN,),
)
IRON_PARTS = (("hotter", "cooler"), ("moisture",), ("surface",))


class Needs(Struct, frozen=True):
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

    @property
    def matters(self) -> bool:
        """Whether any change has a price."""
        return bool(self.turn) or any(map(any, self.price))


def machine_needs(
    graph: Graph,
    table: CostTable,
    found: Sequence[MachineState],
    only: Collection[str] | None = None,
) -> Needs:
    """What the steps ask of the machines; `found` is how these stand at the start.

    `only` leaves all but these parts of the price out.
    """
    wanted = [step.machine for step in graph.steps]
    names = sorted({state.machine for state in [*wanted, *found] if state is not None})
    spots = {name: k for k, name in enumerate(names)}
    of, station, price, first = _classes(
        wanted,
        found,
        lambda state: spots[state.machine],
        lambda a, b: _sum(table.machine_parts(a, b), only),
    )
    start = [NONE] * len(names)
    for c in first:
        start[station[c]] = c
    turn = table.turn_seconds if only is None or TURN in only else 0
    seat = spots[found[-1].machine] if found and turn else NONE
    return Needs(of, station, price, turn, (*start, seat))


def iron_needs(
    graph: Graph,
    table: CostTable,
    found: IronState | None,
    only: Collection[str] | None = None,
) -> Needs:
    """What the steps ask of the iron; as `machine_needs`."""
    before = [] if found is None else [found]
    of, station, price, first = _classes(
        [step.iron for step in graph.steps],
        before,
        lambda _: 0,
        lambda a, b: _sum(table.iron_parts(a, b), only),
    )
    return Needs(of, station, price, 0, (first[0] if first else NONE, NONE))


def _sum(parts: Iterable[ChangedPart], only: Collection[str] | None) -> int:
    return sum(part.seconds for part in parts if only is None or part.what in only)


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

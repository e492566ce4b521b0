"""Made-up garments for the order of work, and the same question put to OR-Tools CP-SAT.

The CP-SAT model is written from the meaning of the prices alone: for each machine, for the seat
and for the iron a circuit through the steps that use it, whose arcs carry the price of going
from one step straight to the next, and a place in the sequence for every step.
"""

from __future__ import annotations

import itertools
import random
from collections.abc import Callable, Sequence

from ortools.sat.python import cp_model

from advisor.order.costs import CostTable
from advisor.order.search import Setting
from advisor.order.steps import IronState, MachineState, Precedence, Step


def garment(
    seed: int, count: int, *, ties: float = 0.2, machines: int = 6, irons: int = 3
) -> tuple[list[Step], list[Precedence]]:
    """A made-up garment; `ties` is how likely a step is to wait for a given earlier one."""
    rng = random.Random(seed)
    setups = [_machine(rng) for _ in range(machines)]
    settings = [_iron(rng) for _ in range(irons)]
    steps = []
    for k in range(count):
        kind = rng.random()
        steps.append(
            Step(
                f"s{k:02}",
                machine=rng.choice(setups) if 0.2 <= kind < 0.7 or kind > 0.97 else None,
                iron=rng.choice(settings) if kind >= 0.7 else None,
                minutes=rng.choice([1.0, 2.5, 5.0, 10.0]),
                rank=rng.randrange(4),
            )
        )
    shuffled = [step.id for step in steps]
    rng.shuffle(shuffled)
    precedences = [
        Precedence(a, b, f"{a} carries {b}")
        for j, b in enumerate(shuffled)
        for a in shuffled[max(0, j - 8) : j]
        if rng.random() < ties
    ]
    return steps, precedences


def table(seed: int) -> CostTable:
    """A maker's own table of prices, some of them nothing."""
    rng = random.Random(seed)

    def price() -> float:
        return rng.choice([0.0, 0.25, 0.5, 1.0, 2.0, 3.0, 6.0])

    return CostTable(
        needle=price(),
        thread=price(),
        bobbin=price(),
        foot=price(),
        plate=price(),
        tension=price(),
        stitch=price(),
        overlock_thread=price(),
        other_machine=price(),
        iron_hotter=price(),
        iron_cooler=price(),
        iron_moisture=price(),
        iron_surface=price(),
    )


def _machine(rng: random.Random) -> MachineState:
    if rng.random() < 0.25:
        colour = rng.choice(["black", "white"])
        return MachineState(
            "overlocker", colour, colour, "universal", 90, "standard", "standard", "overlock", "a"
        )
    return MachineState(
        "household",
        rng.choice(["black", "white", "red"]),
        rng.choice(["black", "white"]),
        rng.choice(["sharp", "ballpoint"]),
        rng.choice([70, 90]),
        rng.choice(["standard", "zip", "walking"]),
        rng.choice(["standard", "straight"]),
        rng.choice(["lockstitch", "zigzag"]),
        rng.choice(["light", "firm"]),
    )


def _iron(rng: random.Random) -> IronState:
    return IronState(
        rng.choice([110, 150, 200]),
        rng.choice(["dry", "steam"]),
        rng.choice(["board", "pile board"]),
    )


def tried_all(steps: Sequence[Step], precedences: Sequence[Precedence], setting: Setting) -> int:
    """The least seconds of all orders, by trying every one."""
    return min(
        setting.seconds(order)
        for order in itertools.permutations(steps)
        if keeps([step.id for step in order], precedences)
    )


def keeps(order: Sequence[str], precedences: Sequence[Precedence]) -> bool:
    """Whether an order has every precedence the right way round."""
    place = {name: k for k, name in enumerate(order)}
    return all(place[item.before] < place[item.after] for item in precedences)


def by_cp_sat(
    steps: Sequence[Step],
    precedences: Sequence[Precedence],
    prices: CostTable,
    seconds: float = 600.0,
    workers: int = 1,
) -> tuple[int, bool]:
    """The least seconds that CP-SAT finds, and whether it has proved them least.

    It has so long by the clock that a busy machine does not fail the proof.
    """
    model = cp_model.CpModel()
    place = [model.new_int_var(0, len(steps) - 1, step.id) for step in steps]
    index = {step.id: k for k, step in enumerate(steps)}
    for item in precedences:
        model.add(place[index[item.before]] < place[index[item.after]])
    forced = _closure(len(steps), [(index[p.before], index[p.after]) for p in precedences])
    terms: list[cp_model.LinearExprT] = []
    for members, price in _circuits(steps, prices):
        terms += _circuit(model, members, price, place, forced)
    model.add_all_different(place)
    model.minimize(sum(terms))
    solver = cp_model.CpSolver()
    solver.parameters.num_workers = workers
    solver.parameters.max_time_in_seconds = seconds
    status = solver.solve(model)
    found = status in (cp_model.OPTIMAL, cp_model.FEASIBLE)
    return round(solver.objective_value) if found else -1, status == cp_model.OPTIMAL


def _circuits(
    steps: Sequence[Step], prices: CostTable
) -> list[tuple[list[int], Callable[[int, int], int]]]:
    sewn = {k: step.machine for k, step in enumerate(steps) if step.machine}
    ironed = {k: step.iron for k, step in enumerate(steps) if step.iron}
    circuits: list[tuple[list[int], Callable[[int, int], int]]] = [
        (
            list(sewn),
            lambda a, b: prices.turn_seconds * (sewn[a].machine != sewn[b].machine),
        ),
        (list(ironed), lambda a, b: prices.iron_seconds(ironed[a], ironed[b])),
    ]
    for name in sorted({state.machine for state in sewn.values()}):
        members = [k for k, state in sewn.items() if state.machine == name]
        circuits.append((members, lambda a, b: prices.machine_seconds(sewn[a], sewn[b])))
    return circuits


def _circuit(
    model: cp_model.CpModel,
    members: list[int],
    price: Callable[[int, int], int],
    place: list[cp_model.IntVar],
    forced: set[tuple[int, int]],
) -> list[cp_model.LinearExprT]:
    """A path through the members, closed over a place where the work begins and ends."""
    if len(members) < 2:
        return []
    arcs: list[tuple[int, int, cp_model.LiteralT]] = []
    terms: list[cp_model.LinearExprT] = []
    for node, a in enumerate(members, start=1):
        arcs.append((0, node, model.new_bool_var("")))
        arcs.append((node, 0, model.new_bool_var("")))
        for other, b in enumerate(members, start=1):
            between = any((a, c) in forced and (c, b) in forced for c in members)
            if a != b and (b, a) not in forced and not between:
                used = model.new_bool_var("")
                arcs.append((node, other, used))
                model.add(place[a] < place[b]).only_enforce_if(used)
                terms.append(price(a, b) * used)
    model.add_circuit(arcs)
    return terms


def _closure(count: int, pairs: list[tuple[int, int]]) -> set[tuple[int, int]]:
    forced = set(pairs)
    for c, a, b in itertools.product(range(count), repeat=3):
        if (a, c) in forced and (c, b) in forced:
            forced.add((a, b))
    return forced

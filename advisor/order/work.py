"""The order of work of a garment: its tasks, what holds them, the plan, its stops and sittings.

Musts that chase each other are a conflict: the smallest cycle is named, one of its links is
given up (the maker's own first), and the rest is planned all the same. Steps that are ticked as
done stand first and cost nothing more; only what is left is planned.
"""

from __future__ import annotations

from collections.abc import Sequence
from typing import Any

from msgspec import Struct, field
from msgspec.structs import replace

from advisor.claims.judgement import Advice
from advisor.knowledge.model import Knowledge
from advisor.knowledge.places import Method
from advisor.order.bastedin import brings_in
from advisor.order.behindhem import too_tender_behind
from advisor.order.closeup import LOOSE, PROMPT, closed_up
from advisor.order.costs import CostTable
from advisor.order.cycles import Cycle, settled
from advisor.order.damp import damp_near
from advisor.order.graph import Graph, build
from advisor.order.kinds import SeamPlace
from advisor.order.nearcap import Capped, capped_near
from advisor.order.nearness import far_apart
from advisor.order.operations import tasks_and_facts
from advisor.order.partruns import in_one_run
from advisor.order.plan import OrderPlan, changes_of
from advisor.order.precedences import precedences_of, too_tender
from advisor.order.rounding import PRESSINGS, a_shade_cooler
from advisor.order.search import Effort, Setting, plan_graph
from advisor.order.setups import Setups
from advisor.order.sittings import Couple, Sitting, split, stops
from advisor.order.steps import Precedence
from advisor.order.taken import refusals, taken
from advisor.order.tasks import Task
from advisor.order.wished_steps import PinAnswer, apply_wishes, honour_pins, yielding
from advisor.project.garment import Garment
from advisor.project.wishes import unknown_step

QUICK = Effort(states=4000, bounds=20_000, beam=8)
"""How hard to search while somebody waits; a garment of a dozen seams is proved within it."""
BACKING = "backing"
"""The family of what is held behind a piece."""
PROVED = 80
"""Steps up to which that is so. Beyond them a state costs more, and so fewer are looked at: the
order stays as good as the beam and the mending make it, and its bound is told."""
DRAWN_UP, SHRUNK = LOOSE[0], "fold-under"
"""Ease is drawn up, and may be shrunk away by steam in the step after it."""
HANG = "hang"
"""The step after which a day passes."""


class Work(Struct, frozen=True):
    """An order of work and all that is to be said about it.

    `tasks` are by id, `order` all steps with the done ones first; `plan` prices what is left.
    `taken` is what nobody says and is assumed of the places and the fitting.
    `methods` are the ways of making that were picked, by place: sheet and shopping read them too.
    `numbers` are those of the whole order, as it was before anything was ticked: a number that was
    printed means the same step for good.
    `hot_near` and `damp_near` are the pressings too hot, or too damp, for what is in by then.
    `faces` are the cloths that, unlike what lies inside, can be covered while a seam is pressed.
    `capped` are the pressings that what is in by then keeps below what their own place bears.
    `hung_low` are the pressings of a hem behind which something hangs that its iron would spoil.
    `apart` are the pairs of places that lie too far from each other for one iron.
    """

    tasks: dict[str, Task]
    order: tuple[str, ...]
    done: tuple[str, ...]
    graph: Graph
    plan: OrderPlan
    setting: Setting
    given_up: tuple[Precedence, ...]
    cycles: tuple[Cycle, ...]
    pins: tuple[PinAnswer, ...]
    couples: tuple[Couple, ...]
    remarks: tuple[str, ...] = ()
    plain: bool = False
    reasons: dict[str, tuple[Precedence, ...]] = field(default_factory=dict)
    leads: dict[str, tuple[Precedence, ...]] = field(default_factory=dict)
    hot_near: tuple[tuple[str, frozenset[str]], ...] = ()
    damp_near: tuple[tuple[str, frozenset[str]], ...] = ()
    faces: frozenset[str] = frozenset()
    taken: tuple[str, ...] = ()
    methods: dict[str, Method] = field(default_factory=dict)
    numbers: dict[str, int] = field(default_factory=dict)
    apart: frozenset[tuple[str, str]] = frozenset()
    capped: Capped = ()
    hung_low: tuple[tuple[str, frozenset[str]], ...] = ()

    def left(self) -> tuple[str, ...]:
        """The steps still to do, in order."""
        return self.order[len(self.done) :]

    def stops(self) -> tuple[str, ...]:
        """The steps after which work may stop with nothing half-done."""
        left = self.left()
        return tuple(left[k - 1] for k in stops(left, self._couples_among(left)))

    def sittings(self, length: float) -> tuple[Sitting, ...]:
        """What is left, cut into sittings; one ends where the garment hangs for a day."""
        parts: list[list[str]] = [[]]
        for name in self.left():
            parts[-1].append(name)
            if name == HANG:
                parts.append([])
        found: list[Sitting] = []
        for part in parts:
            steps = [self.tasks[name].step for name in part]
            inside = self._couples_among(part)
            found += split(steps, length, inside, self.setting) if steps else ()
        return tuple(found)

    def _couples_among(self, names: Sequence[str]) -> tuple[Couple, ...]:
        """The couples that still hold: one with a step that is done holds nothing together."""
        here = set(names)
        return tuple(c for c in self.couples if c.first in here and c.second in here)


def order_of(
    advice: Advice, knowledge: Knowledge, effort: Effort | None = None, *, plain: bool = False
) -> Work:
    """The order of work of a judged garment.

    Args:
        advice: the judged garment; its remedies that mean "earlier" become precedences.
        knowledge: where the operations and their precedences stand.
        effort: how hard to search.
        plain: the customary order instead of the cheapest.

    Raises:
        InputError: the knowledge holds no operations.
    """
    knowledge = knowledge.told(advice.judgement.garment.units)
    wishes = advice.judgement.garment.wishes
    setups = Setups(advice, knowledge)
    found, facts = tasks_and_facts(advice, knowledge)
    tasks = a_shade_cooler(found, setups)
    rules = knowledge.order.precedences
    weights = precedences_of(tasks, rules, setups)
    wished = apply_wishes(tasks, yielding(tasks, weights, rules, wishes), wishes)
    kept, given_up, cycles = settled(wished.tasks, wished.precedences, weights)
    first = build([t.step for t in wished.tasks], kept)
    if not wishes.pin:
        kept = (*kept, *in_one_run(wished.tasks, first))
    customary = [step.id for step in first.steps]
    held, pins = honour_pins(wished.tasks, list(kept), wishes.pin, customary)
    byid = {task.id: task for task in wished.tasks}
    whole = build([t.step for t in wished.tasks], held)
    planned = _Planner(Setting(cost_table(knowledge, wishes.costs)), plain=plain, effort=effort)
    setting = planned.setting
    couples = _couples(wished.tasks, wished.couples)
    loose = [] if plain else _loose(wished.tasks)
    prompt = [t.id for t in wished.tasks if not plain and t.op in PROMPT]
    plan = closed_up(planned.plan(whole), whole, loose, setting, prompt)
    numbers = {name: k for k, name in enumerate(plan.order, 1)}
    done, remarks = _done(wishes.done, numbers, first)
    if done:
        left = [task.step for task in wished.tasks if task.id not in done]
        alive = [p for p in held if p.before not in done and p.after not in done]
        plan = planned.rest(build(left, alive), plan)
    done_and_left = [byid[name] for name in (*done, *plan.order)]
    byid, capped = capped_near(done_and_left, setups)  # what was kept cool enough warns of nothing
    return Work(
        byid,
        (*done, *plan.order),
        done,
        whole,
        plan,
        setting,
        given_up,
        cycles,
        tuple(pins),
        couples,
        (*refusals(facts), *wished.remarks, *remarks),
        plain,
        *_reasons(whole),
        *_near([byid[task.id] for task in done_and_left], setups),
        _faces(tasks),
        taken(facts),
        {place.name: place.method for place in facts.places},
        numbers,
        _far(facts.places, advice.judgement.garment),
        capped,
        _hung_low([byid[name] for name in (*done, *plan.order)], setups),
    )


def _far(places: Sequence[SeamPlace], garment: Garment) -> frozenset[tuple[str, str]]:
    """The pairs of places that no one iron reaches."""
    pairs = ((a, b) for a in places for b in places if far_apart(a, b, garment))
    return frozenset((a.name, b.name) for a, b in pairs)


def _faces(tasks: Sequence[Task]) -> frozenset[str]:
    """The cloths that a towel can cover: neither a notion inside nor what is basted behind."""
    places = [task.place for task in tasks if task.place is not None]
    behind = {c for p in places if p.kind.family == BACKING for c in p.cloths[1:]}
    return frozenset(c for p in places for c in p.cloths if c not in behind)


def effort_for(steps: int) -> Effort:
    """How hard to search for an order of so many steps, that the time grows little more than they.

    The work at each state grows with the steps, so the states go down with their square.
    """
    if steps <= PROVED:
        return QUICK
    share = (PROVED / steps) ** 2
    bounds = max(500, round(QUICK.bounds * share))
    return Effort(round(QUICK.states * share), bounds, QUICK.beam)


def _near(
    tasks: Sequence[Task], setups: Setups
) -> tuple[tuple[tuple[str, frozenset[str]], ...], tuple[tuple[str, frozenset[str]], ...]]:
    """The pressings that are too hot, and too damp, for what was joined nearby before them."""
    hot, damp = [], []
    for k, task in enumerate(tasks):
        if task.op in PRESSINGS:
            before = [b for b in tasks[:k] if brings_in(b) and not _by_itself(b)]
            hot.append((task.id, frozenset().union(*(too_tender(task, b, setups) for b in before))))
            damp.append((task.id, damp_near(task, before, setups)))
    return tuple(item for item in hot if item[1]), tuple(item for item in damp if item[1])


def _hung_low(tasks: Sequence[Task], setups: Setups) -> tuple[tuple[str, frozenset[str]], ...]:
    """What hangs behind each hem that is pressed, and bears less than its iron may have."""
    told = dict(_near(tasks, setups)[0])
    found = []
    for k, task in enumerate(tasks):
        if task.op in PRESSINGS and task.place is not None and task.step.iron is not None:
            most = max(task.at_most or 0.0, task.step.iron.temperature_c)
            joined = [b.place for b in tasks[:k] if brings_in(b) and b.place is not None]
            low = too_tender_behind(task.place, most, joined, setups)
            found.append((task.id, low - told.get(task.id, frozenset())))
    return tuple(item for item in found if item[1])


def _by_itself(task: Task) -> bool:
    """Whether only a loose piece is backed yet, and a later stage of the place joins it."""
    if task.op != "baste-backing" or task.place is None:
        return False
    return any(stage.work == "join" for stage in task.place.method.stages)


def cost_table(knowledge: Knowledge, own: dict[str, float]) -> CostTable:
    """The prices of changes: the knowledge's, then the maker's own."""
    minutes: dict[str, Any] = {**knowledge.order.changes, **own}
    return CostTable(**{name.replace(" ", "_"): price for name, price in minutes.items()})


class _Planner(Struct, frozen=True):
    """How an order is looked for."""

    setting: Setting
    plain: bool
    effort: Effort | None

    def plan(self, graph: Graph) -> OrderPlan:
        """The customary order, or the cheapest that is found."""
        if self.plain:
            return _plain_plan(graph, self.setting)
        return plan_graph(graph, self.setting, self.effort or effort_for(len(graph.steps)))

    def rest(self, graph: Graph, before: OrderPlan) -> OrderPlan:
        """The order of what is left: as it stood before the ticks, unless another is cheaper."""
        plan = self.plan(graph)
        steps = {step.id: step for step in graph.steps}
        kept = [steps[name] for name in before.order if name in steps]
        cost = self.setting.seconds(kept) / 60
        if cost > plan.cost:
            return plan
        changes = changes_of(kept, self.setting.table)
        return replace(plan, order=tuple(step.id for step in kept), cost=cost, changes=changes)


def _plain_plan(graph: Graph, setting: Setting) -> OrderPlan:
    cost = setting.seconds(graph.steps) / 60
    changes = changes_of(graph.steps, setting.table)
    return OrderPlan(tuple(s.id for s in graph.steps), cost, changes, 0.0, cost == 0, cost)


def _done(
    names: tuple[str, ...], numbers: dict[str, int], graph: Graph
) -> tuple[tuple[str, ...], list[str]]:
    """The steps that are ticked, in a lawful order, and what is odd about them."""
    remarks = [unknown_step(name, list(numbers)) for name in names if name not in numbers]
    ticked = {name for name in names if name in numbers}
    done = tuple(sorted(ticked, key=numbers.__getitem__))
    for name in done:
        missed = [b for b in graph.forced_before(name) if b not in ticked]
        if missed:
            remarks.append(f"'{name}' is ticked, but '{missed[-1]}' comes before it and is not.")
    return done, remarks


def _couples(tasks: Sequence[Task], own: list[Couple]) -> tuple[Couple, ...]:
    found = list(own)
    for task in tasks:
        for other in tasks if task.operation and task.operation.together else ():
            same = task.place and other.place and task.place.name == other.place.name
            if same and task.operation and other.op in task.operation.together:
                found.append(Couple(task.id, other.id, task.step.does, task.operation.sources))
    return tuple(found)


def _loose(tasks: Sequence[Task]) -> list[Couple]:
    """What lies loose, each with the stage of its place that follows it."""
    follows = {(t.place.name, t.stage - 1): t.id for t in tasks if t.place is not None}
    drawn = {(t.place.name, t.stage + 1) for t in tasks if t.op == DRAWN_UP and t.place is not None}
    shrunk = [t for t in tasks if t.op == SHRUNK and t.place and (t.place.name, t.stage) in drawn]
    rows = (t for op in LOOSE for t in tasks if t.op == op and t.place is not None)
    found = (*shrunk, *rows, *(t for t in tasks if _cut_open(t)))
    pairs = ((t.id, follows.get((t.place.name, t.stage))) for t in found if t.place)
    return [Couple(one, other) for one, other in pairs if other is not None]


def _cut_open(task: Task) -> bool:
    """Whether a slit is cut here, that ravels and stretches until what comes next turns it."""
    stages = task.place.method.stages if task.place is not None else ()
    return any(stage.cuts_in and stage.work == task.op for stage in stages)


def _reasons(
    graph: Graph,
) -> tuple[dict[str, tuple[Precedence, ...]], dict[str, tuple[Precedence, ...]]]:
    """For each step the precedences before it, and those behind, that do not follow from others."""
    before: dict[str, list[Precedence]] = {}
    behind: dict[str, list[Precedence]] = {}
    for item in graph.reduced():
        before.setdefault(item.after, []).append(item)
        behind.setdefault(item.before, []).append(item)
    return (
        {name: tuple(items) for name, items in before.items()},
        {name: tuple(items) for name, items in behind.items()},
    )

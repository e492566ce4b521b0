"""The order of work as it is told: steps, price, sittings, what cannot be ordered.

Temperatures are °C, times minutes; only sentences follow the maker's units. All minutes are
estimates but the wait for an iron to cool (`trade-iron-wait`).
"""

from __future__ import annotations

from typing import TYPE_CHECKING, NamedTuple

from advisor.answer.model.order import (
    ToldIronState,
    ToldOrder,
    ToldOrderCost,
    ToldPin,
    ToldSettled,
    ToldSitting,
    ToldStep,
)
from advisor.answer.model.told import ToldConflict, ToldLink, ToldRemedy, ToldSource
from advisor.answer.ordernotes import (
    button_notes,
    keep_off,
    keep_off_notes,
    needle_notes,
)
from advisor.answer.ordersettings import set_ups
from advisor.answer.orderwhys import whys
from advisor.answer.teller import Teller, told_source
from advisor.knowledge.ordering import NEVER

if TYPE_CHECKING:
    from advisor.claims.judgement import Advice
    from advisor.knowledge.model import Knowledge
    from advisor.order.cycles import Cycle
    from advisor.order.plan import Change
    from advisor.order.steps import IronState, Precedence
    from advisor.order.wished_steps import PinAnswer
    from advisor.order.work import Work

ASSUMED = (
    "Thread matches each seam's first cloth, or what is laid on it; overlocker cones are neutral.",
    "All minutes are estimates, but the wait for an iron to cool; `order: costs:` takes your own.",
)


def told_order(
    work: Work,
    advice: Advice,
    conflicts: tuple[ToldConflict, ...],
    teller: Teller,
    sitting: float | None = None,
) -> ToldOrder:
    """An order of work as it is told.

    Args:
        work: the order.
        advice: the judged garment.
        conflicts: what the order itself cannot reconcile, as `order_conflicts` tells it.
        teller: for units and sources.
        sitting: how long a sitting may be, minutes; without it the project's own word counts.
    """
    garment = advice.judgement.garment
    changes = {change.step: change for change in work.plan.changes}
    eyes, kept = (
        needle_notes(work, advice, teller.knowledge, teller.units),
        keep_off_notes(work, teller.units),
    )
    sewn_on = button_notes(work, advice, teller.knowledge)
    may_stop, reasons, settings = set(work.stops()), whys(work), set_ups(work, teller.units)
    length = sitting or garment.wishes.sitting
    steps = tuple(
        _step(
            work,
            name,
            changes.get(name),
            teller,
            BesideStep(
                settings[name],
                reasons.get(name, ""),
                name in may_stop,
                tuple(filter(None, (eyes.get(name), kept.get(name), sewn_on.get(name)))),
            ),
        )
        for name in work.order
    )
    return ToldOrder(
        order=steps,
        order_cost=_cost(work, steps),
        order_conflicts=conflicts,
        try_on=tuple(row.step for row in steps if row.operation == "fit"),
        sittings=tuple(
            ToldSitting(
                tuple(s.steps), round(s.minutes, 1), round(s.change_minutes, 1), round(s.over, 1)
            )
            for s in (work.sittings(length) if length else ())
        ),
        settled=settled_clashes(work, advice, earlier=True),
        unsettled=settled_clashes(work, advice, earlier=False),
        keep_off=keep_off(work, teller.units),
        given_up=tuple(_link(p) for p in work.given_up),
        pins=tuple(_pin(answer) for answer in work.pins),
        remarks=tuple(work.remarks),
        assumed=(*ASSUMED, *work.taken),
        order_sources=_sources(work, teller.knowledge),
    )


def _cost(work: Work, steps: tuple[ToldStep, ...]) -> ToldOrderCost:
    plan = work.plan
    return ToldOrderCost(
        changes=len(plan.changes),
        minutes=round(plan.cost, 2),
        bound=round(plan.bound, 2),
        optimal=plan.optimal,
        gap=round(plan.gap, 2),
        plain=round(plan.plain_cost, 2),
        work=round(sum(row.work_min for row in steps if not row.done), 1),
        shown="plain" if work.plain else "cheapest",
    )


class BesideStep(NamedTuple):
    """What is told beside a step: its settings, its reason, whether to stop, what to beware of."""

    set_up: str
    why: str
    stop: bool
    warn: tuple[str, ...]


def _step(
    work: Work, name: str, change: Change | None, teller: Teller, said: BesideStep
) -> ToldStep:
    task = work.tasks[name]
    reasons = work.reasons.get(name, ())
    return ToldStep(
        step=name,
        does=task.step.does,
        operation=task.op,
        on=(task.place.name,) if task.place else tuple(task.cloths),
        how=teller.say(task.how),
        done=name in work.done,
        machine=task.step.machine,
        iron=_iron(task.step.iron, task.at_most),
        after=tuple(dict.fromkeys(p.before for p in reasons)),
        because=tuple(_link(p) for p in reasons),
        why=said.why,
        set_up=said.set_up,
        change=tuple(change.what) if change else (),
        change_min=round(change.minutes, 2) if change else 0.0,
        work_min=task.step.minutes,
        undo=task.operation.undo if task.operation else "easy",
        act=task.operation.act if task.operation and task.operation.undo == NEVER else "",
        stop=said.stop,
        warn=said.warn,
        number=work.numbers[name],
    )


def _iron(state: IronState | None, at_most: float | None = None) -> ToldIronState | None:
    """A setting of the iron and what the layers bear; None where none is needed."""
    if state is None:
        return None
    return ToldIronState(state.temperature_c, at_most, state.moisture, state.surface)


def _link(item: Precedence) -> ToldLink:
    return ToldLink(item.before, item.after, item.why, item.strength, tuple(item.sources))


def order_conflicts(work: Work, teller: Teller) -> tuple[ToldConflict, ...]:
    """What no order can have, and what the maker wants and cannot have; numbered elsewhere."""
    lost = (_unheard(pin) for pin in work.pins if not _heard(pin))
    found = (*map(_cycle, work.cycles), *lost)
    for conflict in found:
        teller.cite(conflict.cited())
    return found


def _cycle(cycle: Cycle) -> ToldConflict:
    first = cycle.links[0].before
    chain = " before ".join([*(p.before for p in cycle.links), first])
    lost = cycle.given_up
    return _clash(
        first,
        f"No order can have {chain}. Printed without '{lost.before}' before '{lost.after}'.",
        tuple(_link(p) for p in cycle.links),
        tuple(ToldRemedy(text) for text in cycle.remedies),
    )


def _unheard(answer: PinAnswer) -> ToldConflict:
    """A step that cannot stand where the maker wants it."""
    pin = answer.pin
    said = answer.remark or "something that must come first speaks against it"
    text = f"'{pin.step}' cannot stand where your project wants it: {said}."
    cure = ToldRemedy(f"Take the pin of '{pin.step}' out of the project, or pin it elsewhere.")
    return _clash(pin.step, text, tuple(_link(p) for p in answer.forbidden_by), (cure,))


def _clash(
    place: str, message: str, because: tuple[ToldLink, ...], remedies: tuple[ToldRemedy, ...]
) -> ToldConflict:
    return ToldConflict(
        number=0,
        id=f"order at {place}".replace(" ", "-"),
        aspect="order",
        aspects=("order",),
        place=place,
        places=(place,),
        scope="garment",
        severity="result",
        between=tuple(dict.fromkeys(name for p in because for name in (p.before, p.after))),
        message=message,
        because=because,
        remedies=remedies,
    )


def _pin(answer: PinAnswer) -> ToldPin:
    pin = answer.pin
    return ToldPin(
        step=pin.step,
        after=pin.after,
        before=pin.before,
        at=pin.at,
        honoured=_heard(answer),
        forbidden_by=tuple(_link(p) for p in answer.forbidden_by),
        remark=answer.remark,
    )


def _heard(answer: PinAnswer) -> bool:
    return not answer.forbidden_by and not answer.remark


def settled_clashes(work: Work, advice: Advice, *, earlier: bool) -> tuple[ToldSettled, ...]:
    """The clashes of the sheet that this order carries the remedy of, or those that it does not."""
    from advisor.order.cures import chosen_cures

    chosen = chosen_cures(advice)
    pressed = any(task.op in ("press-alone", "fuse") for task in work.tasks.values())
    rows = []
    for conflict in advice.judgement.conflicts:
        cure = chosen.get(conflict.key)
        name = cure.remedy if cure is not None else ""
        # In the whole, each seam is pressed by itself before the tender layers are near it.
        whole = conflict.place.scope == "garment" and name == "press-before-joining"
        carried = whole or (pressed and name in ("press-before-joining", "fuse-before-joining"))
        if carried == earlier:
            rows.append(ToldSettled(conflict.place.name, conflict.aspect, name))
    return tuple(rows)


def _sources(work: Work, knowledge: Knowledge) -> tuple[ToldSource, ...]:
    links = (*(p for items in work.reasons.values() for p in items), *work.given_up)
    cited = {s for p in links for s in p.sources}
    cited |= {s for t in work.tasks.values() if t.operation for s in t.operation.sources}
    cited |= {"estimate", "trade-iron-wait"}
    ids = sorted({text.split(" ", 1)[0] for text in cited})
    return tuple(told_source(id_, knowledge) for id_ in ids if id_ in knowledge.sources)

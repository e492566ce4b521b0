"""The order of work as plain data: the part of the answer under `order` and `order_cost`.

Temperatures are °C, times minutes; only sentences follow the maker's units. All minutes are
estimates but the wait for an iron to cool (`trade-iron-wait`).
"""

from __future__ import annotations

from typing import TYPE_CHECKING, Any

from advisor.answer.citing import source_row
from advisor.answer.ordernotes import heat_words, keep_off, keep_off_notes, needle_notes
from advisor.errors import for_shell
from advisor.units import System, needle

if TYPE_CHECKING:
    from advisor.claims.judgement import Advice
    from advisor.knowledge.model import Knowledge
    from advisor.order.cycles import Cycle
    from advisor.order.plan import Change
    from advisor.order.steps import IronState, MachineState, Precedence
    from advisor.order.tasks import Task
    from advisor.order.work import Work

ASSUMED = (
    "Thread matches each seam's first cloth and suits most seams; overlocker cones are neutral.",
    "All minutes are estimates, but the wait for an iron to cool; `order: costs:` takes your own.",
)


def order_of_garment(
    advice: Advice, knowledge: Knowledge, *, plain: bool = False, sitting: float | None = None
) -> dict[str, Any]:
    """The whole order as data; nothing where the knowledge holds no operations."""
    if not knowledge.order.operations:
        return {}
    from advisor.order.work import order_of

    return order_report(order_of(advice, knowledge, plain=plain), advice, knowledge, sitting)


def order_report(
    work: Work, advice: Advice, knowledge: Knowledge, sitting: float | None = None
) -> dict[str, Any]:
    """An order of work as data.

    Args:
        work: the order.
        advice: the judged garment, for its units and wishes.
        knowledge: for the sources.
        sitting: how long a sitting may be, minutes; without it the project's own word counts.
    """
    garment = advice.judgement.garment
    units: System = "us" if garment.units == "us" else "metric"
    changes = {change.step: change for change in work.plan.changes}
    eyes, kept = needle_notes(work, advice, knowledge, units), keep_off_notes(work)
    may_stop = set(work.stops())
    length = sitting or garment.wishes.sitting
    rows = [
        _row(work, name, changes.get(name), may_stop, units)
        | {"warn": [w for w in (eyes.get(name), kept.get(name)) if w]}
        for name in work.order
    ]
    plan = work.plan
    return {
        "order": rows,
        "order_cost": {
            "changes": len(plan.changes),
            "minutes": round(plan.cost, 2),
            "bound": round(plan.bound, 2),
            "optimal": plan.optimal,
            "gap": round(plan.gap, 2),
            "plain": round(plan.plain_cost, 2),
            "work": round(sum(row["work_min"] for row in rows if not row["done"]), 1),
            "shown": "plain" if work.plain else "cheapest",
        },
        "try_on": [row["step"] for row in rows if row["operation"] == "fit"],
        "sittings": [
            {
                "steps": list(s.steps),
                "minutes": round(s.minutes, 1),
                "change_min": round(s.change_minutes, 1),
                "over": round(s.over, 1),
            }
            for s in (work.sittings(length) if length else ())
        ],
        "order_conflicts": [_cycle(cycle) for cycle in work.cycles],
        "settled": settled_clashes(work, advice, earlier=True),
        "unsettled": settled_clashes(work, advice, earlier=False),
        "keep_off": keep_off(work, units),
        "given_up": [_reason(p) for p in work.given_up],
        "pins": [_pin(answer) for answer in work.pins],
        "remarks": list(work.remarks),
        "assumed": list(ASSUMED),
        "order_sources": _sources(work, knowledge),
    }


def _row(
    work: Work, name: str, change: Change | None, may_stop: set[str], units: System
) -> dict[str, Any]:
    task = work.tasks[name]
    reasons = work.reasons.get(name, ())
    return {
        "step": name,
        "does": task.step.does,
        "operation": task.op,
        "on": [task.place.name] if task.place else list(task.cloths),
        "how": task.how,
        "done": name in work.done,
        "machine": machine_data(task.step.machine),
        "iron": iron_data(task.step.iron, task.at_most),
        "after": list(dict.fromkeys(p.before for p in reasons)),
        "because": [_reason(p) for p in reasons],
        "why": why_here(work, task),
        "set_up": setting_words(task, change, units, first=_first_use(work, name)),
        "change": list(change.what) if change else [],
        "change_min": round(change.minutes, 2) if change else 0.0,
        "work_min": task.step.minutes,
        "undo": task.operation.undo if task.operation else "easy",
        "stop": name in may_stop,
    }


def _first_use(work: Work, name: str) -> tuple[bool, bool]:
    """Whether the machine and the iron of a step are used for the first time."""
    machine, iron = work.tasks[name].step.machine, work.tasks[name].step.iron
    before = [work.tasks[n].step for n in work.left()]
    cut = next((i for i, step in enumerate(before) if step.id == name), 0)
    used = before[:cut]
    seen = machine is not None and any(
        s.machine is not None and s.machine.machine == machine.machine for s in used
    )
    return (machine is not None and not seen, iron is not None and not any(s.iron for s in used))


def machine_data(state: MachineState | None) -> dict[str, Any] | None:
    """A set-up of a machine; None where none is needed."""
    if state is None:
        return None
    return {
        "machine": state.machine,
        "thread_above": state.thread_above,
        "thread_below": state.thread_below,
        "point": state.point,
        "size": state.size,
        "foot": state.foot,
        "plate": state.plate,
        "stitch": state.stitch,
        "tension": state.tension,
    }


def iron_data(state: IronState | None, at_most: float | None = None) -> dict[str, Any] | None:
    """A setting of the iron and what the layers bear; None where none is needed."""
    if state is None:
        return None
    return {
        "temperature_c": state.temperature_c,
        "at_most_c": at_most,
        "moisture": state.moisture,
        "surface": state.surface,
    }


def setting_words(
    task: Task, change: Change | None, units: System, *, first: tuple[bool, bool]
) -> str:
    """What is to be set before a step: all of it the first time, then only what changes."""
    parts: list[str] = []
    state, what = task.step.machine, set(change.what if change else ())
    if state is not None:
        words = {
            "thread": f"thread {state.thread_above}",
            "threads": f"threads: {state.thread_above}",
            "needle": f"needle {needle(state.size)} {state.point}",
            "foot": f"{state.foot} foot",
            "plate": f"{state.plate} plate",
            "stitch": f"stitch {state.stitch}",
            "tension": f"tension {state.tension}",
        }
        if first[0]:
            unsaid = {"threads"} | ({"plate"} if state.plate == "wide" else set())
            unsaid |= {"tension"} if state.tension.startswith("balanced") else set()
            told = [text for key, text in words.items() if key not in unsaid]
            parts.append(f"set {state.machine}: {', '.join(told)}")
        elif what & (set(words) | {"machine"}):
            told = [text for key, text in words.items() if key in what]
            back = f"to the {state.machine}" if "machine" in what else ""
            told_all = f"set {', '.join(told)}" if told else "set as it was"
            parts.append(": ".join(p for p in (back, told_all) if p))
    if task.step.iron is not None:
        iron, heat = task.step.iron, heat_words(task, units)
        anew = first[1] or what & {"hotter", "cooler", "moisture", "surface"}
        whole = f"iron {heat}, {iron.moisture}, {iron.surface}"
        parts.append(f"set {whole}" if anew else f"iron as it is, {heat}")
    return "; ".join(parts)


def why_here(work: Work, task: Task) -> str:
    """The one reason that says most about a step's place."""
    place = {name: k for k, name in enumerate(work.order)}
    before = [p for p in work.reasons.get(task.id, ()) if _telling(work, p, task)]
    after = [
        p
        for items in work.reasons.values()
        for p in items
        if p.before == task.id and _telling(work, p, task)
    ]
    looks_on = task.op in ("press", "turn", "hot press", "press-alone", "fuse", "grade") or (
        task.op.startswith("neaten")
    )
    if after and (looks_on or not before):
        best = min(after, key=lambda p: (p.strength != "must", place[p.after], p.why))
        return f"before {best.after}: {best.why}"
    if before:
        best = max(before, key=lambda p: (p.strength == "must", place[p.before], p.why))
        return f"after {best.before}: {best.why}"
    return ""


def _telling(work: Work, item: Precedence, task: Task) -> bool:
    """Whether a reason says more than what every garment does."""
    other = work.tasks[item.before if item.after == task.id else item.after]
    if other.op in ("cut", "mark", "shrink", "last-press", "label", "test", "stay-stitch"):
        return False
    return not (other.place and task.place and other.place.name == task.place.name)


def _reason(item: Precedence) -> dict[str, Any]:
    return {
        "before": item.before,
        "after": item.after,
        "why": item.why,
        "strength": item.strength,
        "sources": list(item.sources),
    }


def _cycle(cycle: Cycle) -> dict[str, Any]:
    chain = " before ".join([*(p.before for p in cycle.links), cycle.links[0].before])
    lost = cycle.given_up
    return {
        "id": f"order at {cycle.links[0].before}".replace(" ", "-"),
        "aspect": "order",
        "place": cycle.links[0].before,
        "severity": "result",
        "message": f"No order can have {chain}. Printed without '{lost.before}' before "
        f"'{lost.after}'.",
        "because": [_reason(p) for p in cycle.links],
        "remedies": [{"text": text} for text in cycle.remedies],
    }


def _pin(answer: Any) -> dict[str, Any]:
    pin = answer.pin
    return {
        "step": pin.step,
        "after": pin.after,
        "before": pin.before,
        "at": pin.at,
        "honoured": not answer.forbidden_by and not answer.remark,
        "forbidden_by": [_reason(p) for p in answer.forbidden_by],
        "remark": answer.remark,
    }


def settled_clashes(work: Work, advice: Advice, *, earlier: bool) -> list[dict[str, str]]:
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
            rows.append({"place": conflict.place.name, "aspect": conflict.aspect, "remedy": name})
    return rows


def _sources(work: Work, knowledge: Knowledge) -> list[dict[str, str]]:
    cited = {s for items in work.reasons.values() for p in items for s in p.sources}
    cited |= {s for t in work.tasks.values() if t.operation for s in t.operation.sources}
    cited |= {"estimate", "trade-iron-wait"}
    ids = sorted({text.split(" ", 1)[0] for text in cited})
    return [source_row(id_, knowledge) for id_ in ids if id_ in knowledge.sources]


def add_order(data: dict[str, Any], advice: Advice, knowledge: Knowledge, file: str) -> None:
    """Put the order of work, its price and its line into the report of a sheet."""
    found = order_of_garment(advice, knowledge)
    if not found:
        return
    data |= {key: found[key] for key in ("order", "order_cost", "order_conflicts")}
    data["order_line"] = order_line(found, file)


def order_line(data: dict[str, Any], file: str) -> str:
    """The order in a line, for the sheet."""
    cost, rows, typed = data["order_cost"], data["order"], f"advisor order {for_shell(file)}"
    left = [row for row in rows if not row["done"]]
    if not left:
        return f"{typed}: all {len(rows)} steps are done."
    done = f", {len(rows) - len(left)} done" if len(left) < len(rows) else ""
    saved = cost["plain"] - cost["minutes"]
    less = f", {saved:.0f} less than seam by seam" if saved >= 1 else ""
    hot = [row["step"] for row in left if row["operation"] in ("press-alone", "fuse")]
    early = f"; before anything tender is in: {', '.join(hot)}" if hot else ""
    clash = " It has conflicts." if data["order_conflicts"] else ""
    return (
        f"{typed}: {len(rows)} steps{done}, {cost['changes']} changes of set-up, "
        f"about {cost['minutes']:.0f} min{less}; next: {left[0]['step']}{early}.{clash}"
    )

"""What is set at the machine and the iron before a step: all of it once, then what changes."""

from __future__ import annotations

from typing import TYPE_CHECKING

from advisor.answer.ordernotes import heat_words
from advisor.order.overlocking import needle_words
from advisor.units import System, needle

if TYPE_CHECKING:
    from advisor.order.steps import MachineState
    from advisor.order.work import Work

ANEW = frozenset({"hotter", "cooler", "moisture", "surface"})
"""Changes at the iron after which all of it is told again."""
SAME, LOWER = "iron as it is,", "iron as it is but no hotter:"
"""What is said where nothing is changed, though it may have been turned up within its mark."""


def set_ups(work: Work, units: System) -> dict[str, str]:
    """What is to be set before each step; "" where it needs neither machine nor iron.

    A machine or an iron that is used for the first time is told whole, also where the steps
    before are done; later only what changes; what is borne stands at every press.
    """
    changes = {change.step: frozenset(change.what) for change in work.plan.changes}
    used: set[str] = set()
    warm = False
    last: float | None = None
    found = {}
    for name in work.order:
        task, what = work.tasks[name], changes.get(name, frozenset())
        machine, iron = task.step.machine, task.step.iron
        done = name in work.done
        parts = []
        if machine is not None:
            parts.append(_machine(machine, what, first=done or machine.machine not in used))
        if iron is not None:
            whole = heat_words(task, units)
            if done or not warm or what & ANEW:
                parts.append(f"set iron {whole}, {iron.moisture}, {iron.surface}")
            else:
                cooler = last is not None and task.at_most is not None and task.at_most < last
                parts.append(f"{LOWER if cooler else SAME} {whole}")
            last = task.at_most
        if not done:
            used |= {machine.machine} if machine else set()
            warm = warm or iron is not None
        found[name] = "; ".join(filter(None, parts))
    return found


def _machine(state: MachineState, what: frozenset[str], *, first: bool) -> str:
    words = {
        "thread": f"thread {state.thread_above}",
        "threads": f"threads: {state.thread_above}",
        "needle": f"needle {needle(state.size)} {needle_words(state)}",
        "foot": f"{state.foot} foot",
        "plate": f"{state.plate} plate",
        "stitch": f"stitch {state.stitch}",
        "tension": f"tension {state.tension}",
    }
    if first:
        unsaid = {"threads"} | ({"plate"} if state.plate == "wide" else set())
        unsaid |= {"tension"} if state.tension.startswith("balanced") else set()
        return f"set {state.machine}: {', '.join(v for k, v in words.items() if k not in unsaid)}"
    if not what & (set(words) | {"machine"}):
        return ""
    told = [text for key, text in words.items() if key in what]
    back = f"to the {state.machine}" if "machine" in what else ""
    return ": ".join(filter(None, (back, f"set {', '.join(told)}" if told else "set as it was")))

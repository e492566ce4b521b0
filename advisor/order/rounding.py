"""An iron that is a shade too hot for what lies beside it is set the shade cooler.

Published in Fahrenheit, 300 is 149 °C, and the mark beside it is 150: no danger to warn of, and
nothing to let pass either.
"""

from __future__ import annotations

from collections.abc import Sequence
from typing import Final

from msgspec.structs import replace

from advisor.craft.irondial import ROUNDING, step_down
from advisor.order.precedences import borne_near
from advisor.order.setups import Setups
from advisor.order.tasks import Task

PRESSINGS: Final = frozenset({"press", "turn", "fold-under"})
"""What is pressed among finished parts; a glue wants its own heat."""


def a_shade_cooler(tasks: Sequence[Task], setups: Setups) -> list[Task]:
    """The tasks, each iron within what is borne beside it where only a rounding parts the two."""
    beside = {(id(t.place), t.op == "bone"): t for t in tasks if t.place is not None}
    return [_cooler(task, list(beside.values()), setups) for task in tasks]


def _cooler(task: Task, beside: Sequence[Task], setups: Setups) -> Task:
    iron = task.step.iron
    if iron is None or task.op not in PRESSINGS:
        return task
    borne = (borne_near(task, other, setups) for other in beside)
    lids = [b for b in borne if b is not None and 0 < iron.temperature_c - b <= ROUNDING]
    if not lids:
        return task
    step = replace(task.step, iron=replace(iron, temperature_c=step_down(min(lids))))
    return replace(task, step=step, at_most=min(lids))

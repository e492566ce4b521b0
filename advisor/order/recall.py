"""What nothing undoes though its own words do not say so: an allowance goes with it."""

from __future__ import annotations

from dataclasses import replace
from typing import Final

from advisor.knowledge.ordering import NEVER, Operation
from advisor.order.overlocking import NEATENED, OVERLOCKER
from advisor.order.steps import MachineState

TRIMMED: Final = {"pinked": "pink", "trimmed and double-stitched": "trim"}
"""Finishes that cut the allowance down, and what is done then."""
KNIFE: Final = "join by overlocker"


def marked(op: Operation, machine: MachineState | None, finish: str) -> Operation:
    """A piece of work, past recall where a knife or the finish of the edge cuts cloth away."""
    knife = machine is not None and machine.machine == OVERLOCKER and machine.stitch != NEATENED
    if not knife and finish not in TRIMMED:
        return op
    return replace(op, undo=NEVER, act=op.act or TRIMMED.get(finish, KNIFE))

"""What nothing undoes though its own words do not say so: an allowance goes with it."""

from __future__ import annotations

from dataclasses import replace
from typing import Final

from advisor.knowledge.ordering import Operation
from advisor.order.overlocking import NEATENED, OVERLOCKER
from advisor.order.steps import MachineState

TRIMMED: Final = frozenset({"pinked", "trimmed and double-stitched"})
"""Finishes that cut the allowance down."""
NEVER: Final = "never"


def marked(op: Operation, machine: MachineState | None, finish: str) -> Operation:
    """A piece of work, past recall where a knife or the finish of the edge cuts cloth away."""
    knife = machine is not None and machine.machine == OVERLOCKER and machine.stitch != NEATENED
    return replace(op, undo=NEVER) if knife or finish in TRIMMED else op

"""What nothing undoes though its own words do not say so: an allowance goes with it."""

from __future__ import annotations

from typing import Final

from msgspec.structs import replace

from advisor.knowledge.ordering import NEVER, Operation
from advisor.order.ascut import NO_YARNS
from advisor.order.overlocking import NEATENED, OVERLOCKER
from advisor.order.steps import MachineState

TRIMMED: Final = {"pinked": "pink", "trimmed and double-stitched": "trim"}
"""Finishes that cut the allowance down, and what is done then."""
KNIFE: Final = "join by overlocker"


def marked(
    op: Operation, machine: MachineState | None, finish: str, structures: frozenset[str]
) -> Operation:
    """A piece of work, past recall where cloth is cut away, or a row pierces what keeps each hole.

    `structures` are those of the cloths that the needle goes through.
    """
    knife = machine is not None and machine.machine == OVERLOCKER and machine.stitch != NEATENED
    if not knife and finish not in TRIMMED:
        holed = sorted(structures & NO_YARNS) if machine is not None and op.undo != NEVER else []
        return replace(op, undo=NEVER, act=f"stitch {holed[0]}") if holed else op
    return replace(op, undo=NEVER, act=op.act or TRIMMED.get(finish, KNIFE))

"""A piece of work as a stage of a method has it."""

from __future__ import annotations

from msgspec.structs import replace

from advisor.knowledge.ordering import Operation
from advisor.knowledge.places import Stage


def staged(stage: Stage, op: Operation, hand: bool = False) -> Operation:
    """A piece of work as a stage has it: its words, also those of a place by hand, its set-up."""
    return replace(
        op,
        does=(hand and stage.does_by_hand) or stage.does or op.does,
        verb=stage.verb or op.verb,
        when=op.when if stage.when is None else stage.when,
        machine=stage.machine or op.machine,
        iron=stage.iron or op.iron,
        minutes=stage.minutes or op.minutes,
        undo=stage.undo or op.undo,
        act=stage.act or op.act,
        let_out=op.let_out if stage.let_out is None else stage.let_out,
    )

"""Ticks steps of the order of work off in a project file; a name that is no step is refused."""

from __future__ import annotations

from collections.abc import Sequence
from pathlib import Path
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from advisor.knowledge.model import Knowledge


def tick_steps(
    file: Path, tick: Sequence[str], untick: Sequence[str], known: Knowledge
) -> tuple[str, ...]:
    """Write ticks into a project file, and take others out of it.

    Returns:
        what could not be kept of the file, to be told; mostly nothing.

    Raises:
        InputError: a name is no step, or was not ticked; nothing is written.
    """
    from advisor.decide.advise import advise
    from advisor.errors import InputError
    from advisor.order.work import order_of
    from advisor.project.load import load_project
    from advisor.project.ticking import tick_file
    from advisor.project.wishes import unknown_step

    garment = load_project(file, known)
    steps = list(order_of(advise(garment, known), known).order)
    for name in tick:
        if name not in steps:
            raise InputError(unknown_step(name, steps))
    before = garment.wishes.done
    for name in untick:
        if name not in before:
            raise InputError(
                unknown_step(name, list(before)).replace("step is called", "ticked step is called")
            )
    return tick_file(file, tick, untick)

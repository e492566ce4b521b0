"""How an overlocker is set: its needles, foot, plate and cones are its own.

What the sewing machine has in never goes over to it: the needle would be of another kind, and one
that is too thick strikes the loopers and flies. Its sizes stand in `knowledge/machines.yaml`.
"""

from __future__ import annotations

from advisor.knowledge.model import Knowledge
from advisor.order.steps import MachineState

OVERLOCKER, NEATENED = "overlocker", "overlock"
"""The machine, and its stitch where it only neatens an edge."""
CONES = "neutral cones"
OF_ITS_KIND = "of the kind that its manual names"
BALLED = frozenset({"ballpoint", "stretch"})


def overlocker_needles(knowledge: Knowledge) -> tuple[int, int]:
    """The finest and the thickest needle that every overlocker on file takes, NM."""
    machines = [m for id_, m in knowledge.machines.items() if id_.endswith("-thread")]
    sizes = [c for m in machines for c in m.claims if c.aspect == "needle.size"]
    spans = [c.span for c in sizes if c.span is not None]
    return int(max(low for low, _ in spans)), int(min(high for _, high in spans))


def on_the_overlocker(
    state: MachineState, knowledge: Knowledge, stitch: str = NEATENED
) -> MachineState:
    """The set-up of the overlocker for what the sewing machine would sew with this one.

    A seam that it joins keeps the needle that the sheet says, as far as it takes one so thick.
    """
    finest, thickest = overlocker_needles(knowledge)
    size, point = min(state.size, thickest), state.point
    if stitch == NEATENED:
        ball = ", ball-pointed if it names one" if point in BALLED else ""
        fine = "at most, the finest that its manual names"
        point = (OF_ITS_KIND if size >= finest else fine) + ball
        size = thickest if size >= thickest else finest
    tension = "balanced" if stitch == NEATENED else state.tension
    return MachineState(
        OVERLOCKER, CONES, CONES, point, size, "overlock", "overlock", stitch, tension
    )


def needle_words(state: MachineState) -> str:
    """What is said of the needle after its size: its point, and of an overlocker its kind."""
    joins = state.machine == OVERLOCKER and state.stitch != NEATENED
    return f"{state.point}, {OF_ITS_KIND}" if joins else state.point

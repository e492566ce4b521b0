"""How an overlocker is set: its needles, foot, plate and cones are its own.

What the sewing machine has in never goes over to it: the needle would be of another kind, and one
that is too thick strikes the loopers and flies. Its sizes stand in `knowledge/machines.yaml`.
"""

from __future__ import annotations

from advisor.knowledge.model import Knowledge
from advisor.order.steps import MachineState

OVERLOCKER = "overlocker"
CONES = "neutral cones"
BALLED = frozenset({"ballpoint", "stretch"})


def overlocker_needles(knowledge: Knowledge) -> tuple[int, int]:
    """The finest and the thickest needle that every overlocker on file takes, NM."""
    machines = [m for id_, m in knowledge.machines.items() if id_.endswith("-thread")]
    spans = [
        c.span
        for m in machines
        for c in m.claims
        if c.aspect == "needle.size" and c.span is not None
    ]
    return int(max(low for low, _ in spans)), int(min(high for _, high in spans))


def on_the_overlocker(
    state: MachineState, knowledge: Knowledge, stitch: str = "overlock"
) -> MachineState:
    """The set-up of the overlocker for what the sewing machine would sew with this one."""
    finest, thickest = overlocker_needles(knowledge)
    kind = "of the kind" if state.size >= finest else "at most, the finest"
    ball = ", ball-pointed if it names one" if state.point in BALLED else ""
    return MachineState(
        OVERLOCKER,
        CONES,
        CONES,
        f"{kind} that its manual names{ball}",
        thickest if state.size >= thickest else finest,
        "overlock",
        "overlock",
        stitch,
        "balanced" if stitch == "overlock" else state.tension,
    )

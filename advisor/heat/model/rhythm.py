"""The rhythm of pressing: how long to press, and how long to rest.

The time budget is the cautious (soonest) end of the first layer to reach its limit, and it
can only shorten a dwell that a rule gives.
"""

from __future__ import annotations

from collections.abc import Sequence

import numpy as np

from advisor.heat.model.bands import SEED, Study, draws_for
from advisor.heat.model.cooling import press_then_lift
from advisor.heat.model.corners import rest_corners_of
from advisor.heat.model.dialogue import Times
from advisor.heat.model.solve import record_times, seconds_until
from advisor.heat.model.stack import Stack

COOL_C = 40.0  # a layer has set, and is safe to move, about here: estimate
LONGEST_REST = 300.0
REST_PASSED = 0.05  # by what share a draw may pass the corners of a rest


def budget(looked_at: Study, stack: int) -> tuple[float, str] | None:
    """The longest press in seconds that no layer's limit forbids, and the layer that sets it.

    None where no layer with a limit reaches it within the horizon.  A layer without a known
    limit is not thereby safe; the caller says so.
    """
    soonest: list[tuple[float, str]] = []
    for place, layer in enumerate(looked_at.stacks[stack].layers):
        if layer.limit_c is not None:
            low = looked_at.seconds(stack, place, layer.limit_c).low
            if low is not None:
                soonest.append((low, layer.name))
    return min(soonest, default=None)


def rests_after(
    stacks: Sequence[Stack],
    press_s: float,
    down_to_c: float = COOL_C,
    *,
    samples: int = 8,
    seed: int = SEED,
) -> tuple[Times, ...]:
    """Seconds after the lift until no ply is warmer than ``down_to_c``; cautious end high.

    For many stacks at once, over the corners that cool slowest and soonest and a few samples of all
    properties together.  Of hundreds of draws at the ends of the ranges and inside them, for six
    pairs of cloths, none passed them by more than 3 %; the ends are widened by REST_PASSED.
    """
    draws = []
    for stack in stacks:
        whole = draws_for(stack, samples, seed)
        corners = rest_corners_of(stack)
        draws.append(np.concatenate([whole[:1], corners, whole[len(whole) - samples :]]))
    _, cooled = press_then_lift(stacks, press_s, draws, rest=record_times(LONGEST_REST, 1.1))
    found, after = [], 0
    for stack, draw in zip(stacks, draws, strict=True):
        plies = [i for i, x in enumerate(stack.layers) if x.role not in ("press cloth", "board")]
        warmest = cooled.hottest[after : after + len(draw)][:, :, plies].max(axis=2)
        after += len(draw)
        when = seconds_until(cooled.times, -warmest, -down_to_c)
        soonest, slowest = float(when.min()), float(when.max())
        ends = (soonest * (1 - REST_PASSED), float(when[0]), slowest * (1 + REST_PASSED))
        found.append(Times(*(v if np.isfinite(v) else None for v in ends)))
    return tuple(found)

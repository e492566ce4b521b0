"""The rhythm of pressing: how long to press, how long to rest, and which side is kinder.

The time budget is the cautious (soonest) end of the first layer to reach its limit, and it
can only shorten a dwell that a rule gives.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

import numpy as np

from advisor.craft.heat.bands import SAMPLES, SEED, Study, Times, draws_for, study
from advisor.craft.heat.cooling import press_then_lift
from advisor.craft.heat.solve import record_times, seconds_until
from advisor.craft.heat.stack import Stack

COOL_C = 40.0  # a layer has set, and is safe to move, about here: estimate
LONGEST_REST = 300.0


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


def rest_after(
    stack: Stack,
    press_s: float,
    down_to_c: float = COOL_C,
    *,
    samples: int = SAMPLES,
    seed: int = SEED,
) -> Times:
    """Seconds after the lift until no ply is warmer than ``down_to_c``; cautious end high."""
    draws = draws_for(stack, samples, seed)
    rest = record_times(LONGEST_REST, 1.1)
    _, cooled = press_then_lift([stack], press_s, [draws], rest=rest)
    apart = ("press cloth", "board")
    plies = [i for i, layer in enumerate(stack.layers) if layer.role not in apart]
    warmest = cooled.hottest[:, :, plies].max(axis=2)
    found = seconds_until(cooled.times, -warmest, -down_to_c)
    ends = (float(found.min()), float(found[0]), float(found.max()))
    return Times(*(v if np.isfinite(v) else None for v in ends))


def rests_after(
    stacks: Sequence[Stack], press_s: float, down_to_c: float = COOL_C, *, samples: int = 8,
    seed: int = SEED,
) -> tuple[Times, ...]:  # fmt: skip
    """The same for many stacks at once, over a few samples of all properties together."""
    draws = []
    for stack in stacks:
        whole = draws_for(stack, samples, seed)
        draws.append(np.concatenate([whole[:1], whole[len(whole) - samples :]]))
    _, cooled = press_then_lift(stacks, press_s, draws, rest=record_times(LONGEST_REST, 1.1))
    found, after = [], 0
    for stack, draw in zip(stacks, draws, strict=True):
        plies = [i for i, x in enumerate(stack.layers) if x.role not in ("press cloth", "board")]
        warmest = cooled.hottest[after : after + len(draw)][:, :, plies].max(axis=2)
        after += len(draw)
        when = seconds_until(cooled.times, -warmest, -down_to_c)
        ends = (float(when.min()), float(when[0]), float(when.max()))
        found.append(Times(*(v if np.isfinite(v) else None for v in ends)))
    return tuple(found)


def turned(stack: Stack) -> Stack:
    """The stack with its plies turned over: pressed from the other side, cloth and board kept."""
    under = {"press cloth": -1, "board": 1}
    first = [x for x in stack.layers if under.get(x.role) == -1]
    last = [x for x in stack.layers if under.get(x.role) == 1]
    plies = [x for x in stack.layers if x.role not in under]
    places = [stack.layers.index(x) for x in plies]
    contacts = list(stack.contacts)
    inner = [contacts[i] for i in places[:-1]]
    contacts[places[0] : places[0] + len(inner)] = inner[::-1]
    layers = (*first, *plies[::-1], *last)
    starts = stack.starts_c
    if starts is not None:
        between = starts[len(first) : len(first) + len(plies)]
        starts = (*starts[: len(first)], *between[::-1], *starts[len(first) + len(plies) :])
    return replace(stack, layers=layers, contacts=tuple(contacts), starts_c=starts)


def kinder_side(stack: Stack, *, samples: int = SAMPLES, seed: int = SEED) -> str | None:
    """Which side to press from: "as laid", "turned", or None where it makes no difference.

    The side whose time budget is longer; no limit reached counts as longest.
    """
    both: Sequence[Stack] = (stack, turned(stack))
    looked_at = study(both, samples=samples, seed=seed)
    times = [budget(looked_at, i) for i in range(2)]
    here, there = (float("inf") if t is None else t[0] for t in times)
    if here == there:
        return None
    return "as laid" if here > there else "turned"

"""Uncertainty: the answer as a band, the cautious end of it, and what dominates it.

Each stack is solved at its mid values, with every uncertain property alone at each of its ends,
at the corners where all of them make a layer hot or cold (:mod:`corners`), and at a seeded Latin
hypercube of all together (each property even over its range, straight in u of :mod:`grid`).  The
band is the envelope of all of these and a little wider, so it contains the mid answer and, as far
as was measured, every answer within the ranges stated (tests/laws/test_heat_bands.py: none of
many draws passes it); it is not a probability, and says nothing of a property outside its range.
The same stack gives the same band in any company.

Cautious end: HIGH for a temperature that may spoil, LOW for the time until it does; the other
way round where heat is wanted (a glue line).
"""

from __future__ import annotations

from collections.abc import Sequence

import numpy as np
from msgspec import Struct
from numpy.typing import NDArray

from advisor.heat.model.corners import corners_of, passed_by
from advisor.heat.model.dialogue import Times
from advisor.heat.model.grid import Floats, properties
from advisor.heat.model.materials import NOTHING, Range
from advisor.heat.model.solve import HORIZON, Course, between, course, record_times, seconds_until
from advisor.heat.model.stack import Stack

SAMPLES = 8
SEED = 20


class Study(Struct, frozen=True):
    """Several stacks solved together over their uncertain properties; read it by stack."""

    stacks: tuple[Stack, ...]
    draws: tuple[Floats, ...]
    course: Course
    samples: int = 0

    def rows(self, stack: int) -> slice:
        """Where the cases of a stack lie; its first case is the one at the mid values."""
        start = sum(len(draw) for draw in self.draws[:stack])
        return slice(start, start + len(self.draws[stack]))

    def temperature(self, stack: int, place: int, second: float) -> Range:
        """The band of a layer's hottest temperature at a time, degrees C; cautious end high."""
        found, more = self._at(stack, place, second), passed_by(self.stacks[stack])
        low, high = float(found.min()), float(found.max())
        under = self.stacks[stack]
        # Wider by what draws may pass, but never beyond the room and the sole themselves.
        low = max(low - more, min(low, under.ambient_c))
        high = min(high + more, max(high, under.sole.high))
        return Range(low, float(found[0]), high)

    def seconds(self, stack: int, place: int, goal_c: float) -> Times:
        """The band of the time at which a layer reaches a temperature; cautious end low."""
        return self._times(stack, self.course.hottest[self.rows(stack), :, place], goal_c)

    def usual_temperature(self, stack: int, place: int, second: float) -> Range:
        """The same as :meth:`temperature` where not all luck comes together: without corners."""
        found = self._at(stack, place, second)[self._usual(stack)]
        return Range(float(found.min()), float(found[0]), float(found.max()))

    def usual_joint_seconds(self, stack: int, place: int, goal_c: float) -> Times:
        """The same as :meth:`joint_seconds` where not all luck comes together."""
        warmth = self.course.joint(place, self.rows(stack))[self._usual(stack)]
        found = seconds_until(self.course.times, warmth, goal_c)
        ends = float(found.min()), float(found[0]), float(found.max())
        return Times(*(v if np.isfinite(v) else None for v in ends))

    def _usual(self, stack: int) -> NDArray[np.bool_]:
        """Which of a stack's cases are no corners."""
        cases = len(self.draws[stack])
        alone = 1 + 2 * len(uncertain(self.stacks[stack]))
        place = np.arange(cases)
        return (place < alone) | (place >= cases - self.samples)

    def joint_seconds(self, stack: int, place: int, goal_c: float) -> Times:
        """When the cooler side of the joint below a layer reaches it; cautious end high."""
        return self._times(stack, self.course.joint(place, self.rows(stack)), goal_c)

    def _at(self, stack: int, place: int, second: float) -> Floats:
        own = self.course.hottest[self.rows(stack), :, place : place + 1]
        return between(self.course.times, own, second)[:, 0]

    def _times(self, stack: int, warmth: Floats, goal_c: float) -> Times:
        times, more = self.course.times, passed_by(self.stacks[stack])
        low = float(seconds_until(times, warmth, goal_c - more).min())
        mid = float(seconds_until(times, warmth[:1], goal_c)[0])
        high = float(seconds_until(times, warmth, goal_c + more).max())
        return Times(*(v if np.isfinite(v) else None for v in (low, mid, high)))

    def dominant(self, stack: int, place: int, second: float) -> tuple[tuple[str, float], ...]:
        """Properties by the swing (K) that each alone gives a layer at a time, widest first."""
        found = self._at(stack, place, second)
        moving = uncertain(self.stacks[stack])
        names = properties(self.stacks[stack])
        ends = found[1 : 1 + 2 * len(moving)].reshape(-1, 2)
        swings = [
            (names[p], float(max(*pair, found[0]) - min(*pair, found[0])))
            for p, pair in zip(moving, ends, strict=True)
        ]
        return tuple(sorted(swings, key=lambda item: (-item[1], item[0])))


def study(
    stacks: Sequence[Stack],
    *,
    samples: int = SAMPLES,
    seed: int = SEED,
    horizon: float = HORIZON,
) -> Study:
    """All stacks over all their draws, in one vectorised call.  Seeded, so repeatable."""
    draws = tuple(draws_for(stack, samples, seed) for stack in stacks)
    return Study(tuple(stacks), draws, course(stacks, draws, record_times(horizon)), samples)


def uncertain(stack: Stack) -> tuple[int, ...]:
    """Which properties of a stack (positions in ``properties``) have a range at all."""
    bounds = [
        stack.sole,
        stack.sole_contact,
        NOTHING if not stack.contacts else _widest(stack.contacts),
        stack.steam_gsm,
        stack.vapour_down if stack.moist else NOTHING,
    ]
    for layer in stack.layers:
        bounds += [layer.thickness_mm, layer.conductivity, layer.specific_heat, layer.water_gsm]
        bounds.append(NOTHING)  # one joint alone is moved at the corners only
    return tuple(i for i, b in enumerate(bounds) if b.low < b.high)


def draws_for(stack: Stack, samples: int, seed: int) -> Floats:
    """The draws (1 + 2 m + corners + samples, properties) of a stack with m uncertain ones."""
    moving = uncertain(stack)
    size = len(properties(stack))
    alone = np.zeros((2 * len(moving), size))
    for row, place in enumerate(moving):
        alone[2 * row, place], alone[2 * row + 1, place] = -1.0, 1.0
    together = np.zeros((samples, size))
    chance = np.random.default_rng(seed)
    for place in moving:
        strata = (chance.permutation(samples) + chance.random(samples)) / samples
        together[:, place] = 2.0 * strata - 1.0
    return np.concatenate([np.zeros((1, size)), alone, corners_of(stack), together])


def _widest(contacts: tuple[Range, ...]) -> Range:
    return max(contacts, key=lambda c: c.high - c.low)

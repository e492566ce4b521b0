"""After the iron is lifted: how the layers cool, and when a hard part may be touched.

The face loses heat by natural convection and radiation,

    q = (h_c + eps sigma (T^2 + T_room^2)(T + T_room)) (T - T_room)      (T in kelvin)

h_c 5 W/(m2 K), 3 to 8 (estimate: a level face in still air), eps 0.9 for cloth (memory), sigma
5.670e-8 W/(m2 K4) (exact constants, derived); the board below is still insulated; drying below
100 degrees, which would cool faster, is left out (cautious).

A hard part (zip tooth, button, pin) is a slab of its own in the stack while it is pressed once;
afterwards it is lumped: m c dT/dt = -h (T - T_room) per m2, so
t = (m c / h) ln((T0 - T_room) / (T_safe - T_room))  (derived); h 8 to 25 W/(m2 K) for a strip a
few millimetres wide (estimate: convection 8 to 12 because it is narrow, radiation
4 sigma T^3 eps at about 70 degrees with eps 0.05 to 0.9, and the tape beside it as a fin, 0 to
6).  Its far side counts as giving off nothing (cautious).  A pin is a wire: the metal behind each
bit of the half that lies free is half the diameter deep (derived), and air takes 15 to 45
W/(m2 K) off so thin a wire (estimate: Nusselt number 0.35 to 1 at 0.6 mm, air 0.026 W/(m K)).
"""

from __future__ import annotations

import math
from collections.abc import Sequence

import numpy as np
from msgspec.structs import replace

from advisor.heat.model.burns import HANDLING_S, touch_limit
from advisor.heat.model.grid import Floats, Grid, build_grid
from advisor.heat.model.hardparts import HardPart
from advisor.heat.model.march import march
from advisor.heat.model.materials import Layer, Range
from advisor.heat.model.solve import Trace, as_trace, record_times
from advisor.heat.model.stack import CLOTH_CONTACT, ROOM_C, Stack
from advisor.heat.model.water import begin

STEFAN_BOLTZMANN = 5.670374e-8  # W/(m2 K4)
KELVIN = 273.15
STILL_AIR = 5.0  # W/(m2 K), estimate
EMISSIVITY = 0.9  # cloth, memory
PART_CONDUCTIVITY = {
    "metal": Range(50.0, 100.0, 160.0),
    "other": Range(0.17, 0.25, 1.0),
}  # ht-1-2-0


def with_part(stack: Stack, name: str, part: HardPart) -> Stack:
    """The stack where the part lies: just below the layer ``name``, a solid slab of its own."""
    place = stack.place_of(name) + 1
    mass = part.density * 1000.0 * part.thickness_mm.mid
    k = PART_CONDUCTIVITY["metal" if part.material == "metal" else "other"]
    heat = Range.exact(part.specific_heat)
    slab = Layer(part.name, part.thickness_mm, mass, k, heat, role="part", sources=part.sources)
    starts = stack.starts_c
    return replace(
        stack,
        layers=(*stack.layers[:place], slab, *stack.layers[place:]),
        contacts=(*stack.contacts[: place - 1], CLOTH_CONTACT, *stack.contacts[place - 1 :]),
        starts_c=None if starts is None else (*starts[:place], starts[place - 1], *starts[place:]),
    )


def open_face(grid: Grid, temperature: Floats) -> Grid:
    """What acts on the top once the iron is up: convection and radiation, at this moment."""
    hot, room = temperature[:, 0] + KELVIN, grid.room + KELVIN
    loss = STILL_AIR + EMISSIVITY * STEFAN_BOLTZMANN * (hot**2 + room**2) * (hot + room)
    top = 1.0 / (1.0 / loss + grid.half[:, 0])
    return replace(grid, top=top, sole=grid.room, flux=np.zeros_like(grid.flux))


def press_then_lift(
    stacks: Sequence[Stack],
    press_s: float,
    draws: Sequence[Floats] | None = None,
    *,
    rest: Floats | None = None,
) -> tuple[Trace, Trace]:
    """The course under the iron, and the course after it is lifted (its times from the lift)."""
    grid = build_grid(stacks, draws)
    times, rest = record_times(press_s), record_times(300.0) if rest is None else rest
    state = begin(grid)
    first = state.temperature[:, None, :]
    pressed, state = march(grid, state, times)
    lift = pressed[:, -1:, :]
    cooled, _ = march(grid, state, rest, face=open_face)
    zero = np.zeros(1)
    free = replace(grid, top=np.zeros_like(grid.top))
    return (
        as_trace(grid, np.concatenate([zero, times]), np.concatenate([first, pressed], axis=1)),
        as_trace(free, np.concatenate([zero, rest]), np.concatenate([lift, cooled], axis=1)),
    )


def seconds_to_cool(
    part: HardPart, start_c: Range, *, contact_s: float = HANDLING_S, room_c: float = ROOM_C
) -> Range:
    """Seconds after lifting until the part may be touched, from the soonest to the latest.

    The cautious end is ``high``.  Raises ValueError where the room itself is too warm.
    """
    safe = touch_limit(part.material, contact_s)
    if safe <= room_c:
        raise ValueError(f"a room of {room_c:g} degrees never cools a part to {safe:g}")

    def wait(start: float, thick: float, loss: float) -> float:
        if start <= safe:
            return 0.0
        stored = part.density * 1000.0 * thick / 1000.0 * part.specific_heat
        return stored / (loss * part.faces) * math.log((start - room_c) / (safe - room_c))

    thick = part.thickness_mm
    return Range(
        wait(start_c.low, thick.low, part.loss.high),
        wait(start_c.mid, thick.mid, part.loss.mid),
        wait(start_c.high, thick.high, part.loss.low),
    )

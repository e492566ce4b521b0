"""The heat model against textbooks, closed forms and an independent integrator.

Each table names its source; the citation ids are those of the knowledge.  "exact" values are the
textbook's own problem worked to more digits from the textbook's formula.
"""

from __future__ import annotations

import math

import numpy as np
import pytest
from msgspec.structs import replace
from scipy.integrate import solve_ivp
from scipy.optimize import brentq
from scipy.special import erf, erfc, erfinv

from advisor.heat.model.burns import touch_limit
from advisor.heat.model.grid import build_grid, properties
from advisor.heat.model.materials import (
    BAXTER_WEIGHT,
    SCHUHMEISTER_WEIGHT,
    WATER_SPECIFIC_HEAT,
    Layer,
    Range,
    mixture_conductivity,
    packing,
)
from advisor.heat.model.solve import (
    Trace,
    course,
    record_times,
    seconds_until,
    trace,
    trace_grid,
)
from advisor.heat.model.stack import Stack
from advisor.heat.model.water import begin

DAY = 86400.0


def exact(value: float) -> Range:
    """A property taken as certain."""
    return Range.exact(value)


def slab(depth_m: float, k: float, rho_c: float, *, name: str = "slab") -> Layer:
    """A uniform slab; density and specific heat only matter as their product."""
    return Layer(name, exact(depth_m * 1000.0), rho_c * depth_m, exact(k), exact(1000.0))


def face_held(layer: Layer, face_c: float, start_c: float, *, resistance: float = 0.0) -> Stack:
    """One slab, insulated at the back, whose top meets a temperature through a resistance."""
    return Stack((layer,), exact(face_c), exact(resistance), ambient_c=start_c)


def solved(stack: Stack, seconds: list[float], *, cells: int = 200) -> tuple[Trace, np.ndarray]:
    """The course of one stack on an even grid, and the depth (m) of its cells' middles."""
    found = trace_grid(build_grid([stack], cells=cells, even=True), np.array(seconds))
    depth = stack.layers[0].thickness_mm.mid / 1000.0
    return found, (np.arange(cells) + 0.5) * depth / cells


# Frost: start, face, alpha, days, depth of 0 degrees (m) as printed or worked, and its source.
FROST = [
    ("incropera 5.6", 20.0, -15.0, 0.52 / (2050.0 * 1840.0), 60.0, 0.4002, 0.677),
    ("cengel 4-6", 15.0, -10.0, 0.15e-6, 90.0, 0.3708, 0.801),
    ("cengel problem", 8.0, -8.0, 0.15e-6, 60.0, 0.47694, 0.841),
]


@pytest.mark.parametrize("row", FROST, ids=lambda row: row[0])
def test_frost_depth(row: tuple[str, float, float, float, float, float, float]) -> None:
    """Oracles 1 to 3: the frost line lies where the textbook puts it, within a millimetre."""
    _, start, face, alpha, days, eta, depth = row
    closed = float(erfinv((0.0 - face) / (start - face)))
    course, x = solved(face_held(slab(4.0, 1.0, 1.0 / alpha), face, start), [days * DAY])
    found = float(np.interp(0.0, course.cells[0, -1], x))
    assert eta == pytest.approx(closed, abs=1e-4)
    assert depth == pytest.approx(2.0 * closed * math.sqrt(alpha * days * DAY), abs=6e-4)
    assert depth == pytest.approx(found, abs=1e-3)
    # Oracle trap: open code that takes erfc's inverse here prints 0.92 m for the first; wrong.
    assert abs(found - 0.92) > 0.05


@pytest.mark.parametrize(
    ("source", "k", "alpha", "face"),
    [("cengel: wood", 0.159, 1.75e-7, 148.6), ("cengel: aluminium", 237.0, 9.71e-5, 22.0)],
)
def test_constant_flux(source: str, k: float, alpha: float, face: float) -> None:
    """Oracle 4: 1250 W/m2 for 20 minutes into a thick body at 20 degrees, within 0.1 K."""
    depth = 8.0 * math.sqrt(alpha * 1200.0)
    grid = build_grid([face_held(slab(depth, k, k / alpha), 0.0, 20.0)], cells=200, even=True)
    driven = replace(grid, top=np.zeros(1), flux=np.full(1, 1250.0))
    course = trace_grid(driven, np.array([1200.0]))
    assert face == pytest.approx(float(course.over[0, -1, 0]), abs=0.1)


def test_two_bodies_in_contact() -> None:
    """Oracle 5 (cengel): bodies of effusivity 1.1 at 35 and 24 at 15 meet at 15.88 degrees."""
    warm, cold = slab(0.06, 1.1, 1.1e6), slab(0.06, 24.0, 24e6, name="cold")
    stack = Stack((warm, cold), exact(0.0), contacts=(exact(0.0),), starts_c=(35.0, 15.0))
    grid = build_grid([stack], cells=100, even=True)
    course = trace_grid(replace(grid, top=np.zeros(1)), np.array([100.0]))
    assert pytest.approx(float(course.over[0, -1, 1]), abs=0.01) == 15.88


def test_pipe_wall() -> None:
    """Oracle 6 (incropera 5.4): exact to 0.02 K; the companion's rounded 42.92 and -7362 at 1 %."""
    k, alpha, h, half = 63.9, 18.8e-6, 500.0, 0.04
    stack = face_held(slab(half, k, k / alpha), 60.0, -20.0, resistance=1.0 / h)
    course, _ = solved(stack, [480.0])
    inner, outer = float(course.under[0, -1, 0]), float(course.over[0, -1, 0])
    stored = float(np.mean(course.cells[0, -1] + 20.0)) * k / alpha * half
    assert pytest.approx(inner, abs=0.02) == 43.02
    assert pytest.approx(outer, abs=0.02) == 45.36
    assert -7318.0 == pytest.approx(h * (outer - 60.0), abs=10.0)
    assert -2.725e7 == pytest.approx(-math.pi * stored, rel=1e-3)
    assert 42.92 == pytest.approx(inner, rel=0.01)
    assert -7362.0 == pytest.approx(h * (outer - 60.0), rel=0.01)


def test_brass_plate() -> None:
    """Oracle 7 (cengel): centre 277.2, surface 279.6; lumped 279.4 within 0.3 K."""
    k, alpha, h, half = 110.0, 33.9e-6, 120.0, 0.02
    stack = face_held(slab(half, k, k / alpha), 500.0, 20.0, resistance=1.0 / h)
    course, _ = solved(stack, [420.0])
    lumped = 500.0 - 480.0 * math.exp(-h * 420.0 * alpha / (k * half))
    assert pytest.approx(float(course.under[0, -1, 0]), abs=0.1) == 277.2
    assert pytest.approx(float(course.over[0, -1, 0]), abs=0.1) == 279.6
    assert pytest.approx(lumped, abs=0.3) == 279.4


# Oracle 8 (computed from zeta tan zeta = Bi): Biot number, first root, first coefficient.
ROOTS = [
    (0.1, 0.3111, 1.0161),
    (0.5, 0.6533, 1.0701),
    (1.0, 0.8603, 1.1191),
    (2.0, 1.0769, 1.1785),
    (5.0, 1.3138, 1.2402),
    (10.0, 1.4289, 1.2620),
    (100.0, 1.5552, 1.2731),
]


@pytest.mark.parametrize(("biot", "root", "first"), ROOTS)
def test_roots_of_the_plane_wall(biot: float, root: float, first: float) -> None:
    """Oracle 8: the slowest mode of a wall dies with its root, and starts at its coefficient."""
    stack = face_held(slab(1.0, 1.0, 1.0), 0.0, 1.0, resistance=1.0 / biot)
    course, _ = solved(stack, [1.0, 1.5], cells=160)
    early, late = course.under[0, 1:, 0]
    found = math.sqrt(math.log(early / late) / 0.5)
    closed = brentq(lambda z: z * math.tan(z) - biot, 1e-6, math.pi / 2.0 - 1e-9)
    assert root == pytest.approx(closed, abs=6e-5)
    assert root == pytest.approx(found, abs=2e-4)
    assert first == pytest.approx(early * math.exp(found**2), abs=3e-4)


# Oracles 9 and 10 (carslaw-jaeger 3.4; series summed): Fourier number and temperature.
STEPPED_CENTRE = [
    (0.05, 0.99687),
    (0.1, 0.94931),
    (0.2, 0.77231),
    (0.3, 0.60680),
    (0.5, 0.37078),
    (1.0, 0.10798),
    (1.5, 0.03144),
]
ONE_FACE_MIDDLE = [(0.05, 0.11384), (0.1, 0.26276), (0.2, 0.41157), (0.5, 0.49542)]


def test_both_faces_stepped() -> None:
    """Oracle 9: the centre of a slab whose faces are stepped, to four digits."""
    times = [fo for fo, _ in STEPPED_CENTRE]
    course, _ = solved(face_held(slab(1.0, 1.0, 1.0), 0.0, 1.0), times)
    found = course.under[0, 1:, 0]
    assert [theta for _, theta in STEPPED_CENTRE] == pytest.approx(found, abs=1e-4)
    # The one-term formula is not good enough below Fo 0.2: it would give 0.99484 here.
    one_term = 4.0 / math.pi * math.exp(-((math.pi / 2.0) ** 2) * 0.1)
    assert one_term == pytest.approx(0.99484, abs=1e-4)
    assert abs(found[1] - one_term) > 0.04


def test_one_face_stepped() -> None:
    """Oracle 10: the middle of a slab, one face at 1 and the other kept at 0, to four digits."""
    stack = replace(face_held(slab(1.0, 1.0, 1.0), 1.0, 0.0), back_h=1e12)
    course, _ = solved(stack, [fo for fo, _ in ONE_FACE_MIDDLE])
    middle = course.cells[0, 1:, 99:101].mean(axis=1)
    assert [theta for _, theta in ONE_FACE_MIDDLE] == pytest.approx(middle, abs=1e-4)


# Oracle 11 (computed): the complementary error function.
ERFC = [
    (0.0, 1.0),
    (0.1, 0.88754),
    (0.25, 0.72367),
    (0.5, 0.47950),
    (0.75, 0.28884),
    (1.0, 0.15730),
    (1.5, 0.03389),
    (2.0, 0.00468),
]


def test_error_function() -> None:
    """Oracle 11: scipy's erfc, and the heated half-space of the model, follow the table."""
    course, x = solved(face_held(slab(8.0, 1.0, 1.0), 1.0, 0.0), [1.0], cells=250)
    found = np.interp([2.0 * eta for eta, _ in ERFC[1:]], x, course.cells[0, -1])
    table = [value for _, value in ERFC]
    assert table == pytest.approx([float(erfc(eta)) for eta, _ in ERFC], abs=6e-6)
    assert table[1:] == pytest.approx(found, abs=2e-4)


# Oracles 12 and 13 (computed): seconds and temperature of a face at 200 from 20 degrees.
HALF_MM_DEEP = [(1.0, 107.31), (5.0, 155.87), (10.0, 168.55), (30.0, 181.74)]
BACK_OF_COTTON = [(0.5, 55.94), (1.0, 107.87), (2.0, 162.94), (5.0, 197.59)]


def test_half_a_millimetre_deep() -> None:
    """Oracle 12: erfc's temperature 0.5 mm below a face at 200 degrees, within 0.05 K."""
    k, rho_c = 0.05, 195000.0
    course, x = solved(
        face_held(slab(0.02, k, rho_c), 200.0, 20.0), [t for t, _ in HALF_MM_DEEP], cells=240
    )
    found = [float(np.interp(0.0005, x, row)) for row in course.cells[0, 1:]]
    closed = [
        20.0 + 180.0 * float(erfc(0.0005 / (2.0 * math.sqrt(k / rho_c * t))))
        for t, _ in HALF_MM_DEEP
    ]
    assert [c for _, c in HALF_MM_DEEP] == pytest.approx(closed, abs=0.006)
    assert [c for _, c in HALF_MM_DEEP] == pytest.approx(found, abs=0.05)


def test_back_of_cotton() -> None:
    """Oracle 13: the insulated back of 0.5 mm of cotton, within 0.05 K, and 1 K at usual cells."""
    stack = face_held(slab(0.0005, 0.06, 500.0 * 1300.0), 200.0, 20.0)
    times = [t for t, _ in BACK_OF_COTTON]
    fine, _ = solved(stack, times, cells=100)
    usual, _ = solved(stack, times, cells=6)
    table = [c for _, c in BACK_OF_COTTON]
    assert table == pytest.approx(fine.under[0, 1:, 0], abs=0.05)
    assert table == pytest.approx(usual.under[0, 1:, 0], abs=1.0)


def cloth(name: str, mm: float, gsm: float, k: float, c: float, water: float = 0.0) -> Layer:
    """A cloth with certain properties."""
    return Layer(name, exact(mm), gsm, exact(k), exact(c), exact(water))


NYLON = cloth("nylon", 0.12, 60.0, 0.08, 1460.0)
COTTON = cloth("cotton", 0.25, 120.0, 0.06, 1300.0)
PRESS_CLOTH = cloth("press cloth", 0.30, 120.0, 0.06, 1300.0)
WOOL_05 = cloth("wool", 1.5, 350.0, 0.05, 1360.0)
WOOL_06 = cloth("wool", 1.5, 350.0, 0.06, 1360.0)
FELT = cloth("felt", 6.0, 900.0, 0.045, 1300.0)

# The computed illustration: layers, iron, then (mid, low, high) at 1, 2, 5, 10, 30 s.
ILLUSTRATION = [
    (
        [COTTON, NYLON, FELT],
        200.0,
        [(96, 75, 112), (131, 110, 145), (164, 148, 172), (177, 166, 182), (187, 182, 190)],
    ),
    ([COTTON, NYLON, FELT], 150.0, [(75,), (100,), (124,), (133,), (141,)]),
    (
        [PRESS_CLOTH, COTTON, NYLON, FELT],
        200.0,
        [(43, 34, 51), (74, 59, 85), (123, 105, 133), (151, 137, 159), (176, 168, 179)],
    ),
    (
        [WOOL_05, NYLON, FELT],
        200.0,
        [(21,), (27, 25, 28), (55, 50, 58), (88, 82, 91), (136, 132, 139)],
    ),
    (
        [WOOL_06, NYLON, FELT],
        200.0,
        [(21,), (30, 28, 32), (63, 57, 67), (98, 91, 102), (145, 140, 148)],
    ),
]
CONTACTS = [(500.0, 1e-3), (250.0, 2e-3), (1000.0, 5e-4)]


def between_plies(layers: list[Layer], sole: float, h: float, gap: float) -> Stack:
    """A stack with one contact resistance at every joint."""
    return Stack(tuple(layers), exact(sole), exact(1.0 / h), (exact(gap),) * (len(layers) - 1))


@pytest.mark.parametrize(("layers", "sole", "rows"), ILLUSTRATION)
@pytest.mark.parametrize(("cells", "tolerance"), [(20, 1.0), (6, 1.3)])
def test_illustration(
    layers: list[Layer], sole: float, rows: list[tuple[int, ...]], cells: int, tolerance: float
) -> None:
    """The worked rows come out within 1 K (half of it rounding); the wool's belong to 0.05.

    The wool row printed for 0.06 W/(m K) is in truth that of 0.05; both are held here.
    """
    stacks = [between_plies(layers, sole, h, gap) for h, gap in CONTACTS]
    top = stacks[0].place_of("nylon")
    found = trace(stacks, times=np.array([1.0, 2.0, 5.0, 10.0, 30.0]), cells=cells).over[:, 1:, top]
    for second, row in enumerate(rows):
        assert list(row) == pytest.approx(found[: len(row), second], abs=tolerance)


def test_wool_at_the_stated_conductivity_is_not_the_printed_row() -> None:
    """Oracle trap: with the 0.06 stated above the printed wool row is missed by many kelvins."""
    found = trace([between_plies([WOOL_06, NYLON, FELT], 200.0, 500.0, 1e-3)])
    assert found.at(10.0)[0, 1] - 88.0 > 8.0


def by_another_integrator(stack: Stack, seconds: list[float], per_layer: int = 40) -> np.ndarray:
    """Temperatures at the top cell of each layer by a stiff integrator on a grid of its own."""
    k = np.repeat([x.conductivity.mid for x in stack.layers], per_layer)
    wide = np.repeat([x.thickness_mm.mid / 1000.0 / per_layer for x in stack.layers], per_layer)
    each = [x.mass_gsm / 1000.0 / per_layer * x.specific_heat.mid for x in stack.layers]
    heat = np.repeat(each, per_layer)
    resist = wide[:-1] / (2.0 * k[:-1]) + wide[1:] / (2.0 * k[1:])
    resist[per_layer - 1 :: per_layer] += [c.mid for c in stack.contacts]
    into = stack.sole_contact.mid + wide[0] / (2.0 * k[0])

    def slope(_: float, temperature: np.ndarray) -> np.ndarray:
        down = (temperature[:-1] - temperature[1:]) / resist
        gain = np.zeros_like(temperature)
        gain[0] = (stack.sole.mid - temperature[0]) / into
        gain[1:] += down
        gain[:-1] -= down
        return np.asarray(gain / heat)

    start = np.full(len(k), stack.ambient_c)
    done = solve_ivp(
        slope, (0.0, seconds[-1]), start, "LSODA", seconds, rtol=1e-7, atol=1e-6, lband=1, uband=1
    )
    return np.asarray(done.y[::per_layer].T)


@pytest.mark.parametrize("layers", [row[0] for row in ILLUSTRATION[1:]])
def test_independent_fine_grid(layers: list[Layer]) -> None:
    """An independent integrator on a fine grid agrees within 0.1 K at the same fineness."""
    stack = between_plies(layers, 180.0, 400.0, 8e-4)
    times = [0.5, 1.0, 5.0, 20.0]
    grid = build_grid([stack], cells=40, even=True)
    fine = trace_grid(grid, np.array(times))
    expected = by_another_integrator(stack, times)
    assert fine.cells[0, 1:, ::40] == pytest.approx(expected, abs=0.1)


class Explicit:
    """Another solver of moist stacks: tiny explicit steps on an even grid of its own.

    Free water boils at 100 degrees; bound water leaves along the curve of its temperature; of the
    vapour the share ``down`` sinks and condenses in the next cells that are cooler.
    """

    latent, c_w = 2.257e6, 4180.0

    def __init__(self, stack: Stack, per_layer: int, down: float = 0.0) -> None:
        def even(values: list[float], parts: int = per_layer) -> np.ndarray:
            return np.repeat([v / parts for v in values], per_layer)

        k = even([x.conductivity.mid for x in stack.layers], 1)
        wide = even([x.thickness_mm.mid / 1000.0 for x in stack.layers])
        self.dry = even([x.mass_gsm / 1000.0 * x.specific_heat.mid for x in stack.layers])
        self.water = even([x.water_gsm.mid / 1000.0 for x in stack.layers])
        self.most_bound = 2.35 * even([x.binds_gsm / 1000.0 for x in stack.layers])
        self.resist = wide[:-1] / (2.0 * k[:-1]) + wide[1:] / (2.0 * k[1:])
        self.resist[per_layer - 1 :: per_layer] += [c.mid for c in stack.contacts]
        self.into = stack.sole_contact.mid + wide[0] / (2.0 * k[0])
        self.wide, self.k = wide, k
        self.sole, self.down, self.per_layer = stack.sole.mid, down, per_layer
        self.now = np.full(len(k), stack.ambient_c)

    def step(self, dt: float) -> None:
        """One step of so many seconds."""
        flow = (self.now[:-1] - self.now[1:]) / self.resist * dt
        gain = np.zeros_like(self.now)
        gain[0] = (self.sole - self.now[0]) / self.into * dt
        gain[1:] += flow
        gain[:-1] -= flow
        self.now = self.now + gain / (self.dry + self.water * self.c_w)
        for cell in np.flatnonzero((self.now > 100.0) & (self.water > 0.0)).tolist():
            self.sink(cell + 1, self.down * self.dried(cell))

    def dried(self, cell: int) -> float:
        """Let a cell above boiling point lose what water it cannot hold; how much, kg/m2."""
        begun = self.water[cell]
        over = (self.now[cell] - 100.0) * (self.dry[cell] + begun * self.c_w)
        free = max(begun - self.most_bound[cell], 0.0)
        gone = min(over / self.latent, free)
        rest = over - gone * self.latent
        if gone == free and self.most_bound[cell] > 0.0:
            most = float(self.most_bound[cell])
            held = min(float(begun - gone), most)

            def left(warm: float) -> float:
                return min(held, most * math.exp(-0.25 * math.sqrt(warm - 100.0)))

            def surplus(warm: float) -> float:
                took = (self.dry[cell] + left(warm) * self.c_w) * (warm - 100.0)
                return float(took + (held - left(warm)) * self.latent - rest)

            warm = brentq(surplus, 100.0, 101.0 + rest / self.dry[cell], xtol=1e-9)
            self.water[cell] = left(warm)
            self.now[cell] = warm
        else:
            self.water[cell] = begun - gone
            self.now[cell] = 100.0 + rest / (self.dry[cell] + self.water[cell] * self.c_w)
        return float(begun - self.water[cell])

    def sink(self, cell: int, vapour: float) -> None:
        """Let vapour (kg/m2) condense from a cell downwards where it is under 100 degrees."""
        while vapour > 0.0 and cell < len(self.now):
            held = self.dry[cell] + self.water[cell] * self.c_w
            fallen = min(vapour, max(held * (100.0 - self.now[cell]), 0.0) / self.latent)
            full = held + fallen * self.c_w
            warm = held * self.now[cell] + fallen * (self.latent + 100.0 * self.c_w)
            self.now[cell] = warm / full if fallen > 0.0 else self.now[cell]
            self.water[cell] += fallen
            vapour, cell = vapour - fallen, cell + 1

    def upper_faces(self) -> np.ndarray:
        """The temperature of the upper face of each layer."""
        first = slice(0, None, self.per_layer)
        down = ((self.now[:-1] - self.now[1:]) / self.resist)[self.per_layer - 1 :: self.per_layer]
        flow = np.concatenate([[(self.sole - self.now[0]) / self.into], down])
        face: np.ndarray = self.now[first] + flow * (self.wide / (2.0 * self.k))[first]
        return face


@pytest.mark.parametrize("second", [2.0, 10.0, 16.0])
@pytest.mark.parametrize("binds", [0.0, 9.0])
def test_moist_against_explicit_enthalpy(second: float, binds: float) -> None:
    """Tiny explicit steps of a damp cloth over cotton agree: 0.6 K finely, 4 K at usual steps.

    With all water free, and with 9 g/m2 of it (and what a fibre holds besides) bound.
    """
    damp = cloth("damp", 0.30, 120.0, 0.06, 1300.0, 60.0)
    board = cloth("board", 1.5, 300.0, 0.05, 1300.0)
    made = between_plies([replace(damp, binds_gsm=binds), COTTON, board], 200.0, 500.0, 1e-3)
    stack = replace(made, vapour_down=exact(0.0))
    other = Explicit(stack, 6)
    for _ in range(round(second / 0.002)):
        other.step(0.002)
    grid = build_grid([stack], cells=6, even=True)
    times = np.geomspace(0.02, second, 80)
    fine = trace_grid(grid, times, split=12).cells[0, -1]
    usual = trace_grid(grid, times).cells[0, -1]
    assert fine == pytest.approx(other.now, abs=0.6)
    assert usual == pytest.approx(other.now, abs=4.0)


# Two thick moist layers: mm, g/m2, water g/m2, what the fibre binds, share of vapour going down;
# how far the time to each goal may be off, where it comes within half a minute (the last: a
# minute).
THICK = [
    (3.0, 500.0, 75.0, 75.0, 0.3, 30),
    (1.5, 350.0, 50.0, 50.0, 0.7, 30),
    (1.5, 350.0, 120.0, 50.0, 0.3, 60),
]


@pytest.mark.parametrize(("mm", "gsm", "water", "binds", "down", "seconds"), THICK)
def test_thick_moist_layers_against_explicit_steps(
    mm: float, gsm: float, water: float, binds: float, down: float, seconds: int
) -> None:
    """Below thick moist cloth 60, 80 and 90 degrees come within 8 % of their time, see march."""
    coat = replace(cloth("coat", mm, gsm, 0.045, 1360.0, water), binds_gsm=binds)
    made = between_plies([coat, replace(coat, name="under"), FELT], 190.0, 500.0, 1e-3)
    stack = replace(made, vapour_down=exact(down))
    other = Explicit(stack, 24, down)
    reached: dict[float, float] = {}
    for count in range(seconds * 100):
        other.step(0.01)
        face = other.upper_faces()[1]
        for goal in (60.0, 80.0, 90.0):
            if face >= goal:
                reached.setdefault(goal, (count + 1) * 0.01)
        if 90.0 in reached:
            break
    found = course([stack], [np.zeros((1, len(properties(stack))))], record_times())
    assert reached
    for goal, when in reached.items():
        usual = float(seconds_until(found.times, found.hottest[:, :, 1], goal)[0])
        assert when == pytest.approx(usual, rel=0.08)


# Damp plateau (computed, t = m L / q): resistance, seconds for 100 g/m2 under 200 degrees.
@pytest.mark.parametrize(("resistance", "seconds"), [(0.006, 14.0), (0.010, 23.0)])
def test_damp_cloth_holds_near_boiling_until_dry(resistance: float, seconds: float) -> None:
    """A damp layer at 100 degrees stays there until its water is gone, then climbs."""
    damp = cloth("damp", 0.01, 50.0, 1.0, 1300.0, 100.0)
    stack = Stack((damp,), exact(200.0), exact(resistance), starts_c=(100.0,))
    course = trace_grid(build_grid([stack], cells=1), np.arange(0.1, 30.0, 0.1))
    plateau = course.cells[0, course.times < seconds - 1.0]
    assert np.full_like(plateau, 100.0) == pytest.approx(plateau, abs=1e-6)
    dry = seconds_until(course.times, course.cells[:, :, -1], 100.5)[0]
    assert seconds == pytest.approx(dry, abs=0.7)
    assert dry == pytest.approx(0.1 * 2.257e6 * resistance / 100.0, abs=0.3)


def test_steam_heats_a_layer_to_boiling() -> None:
    """Heat balance (computed): 6.5 g/m2 of steam bring 120 g/m2 of moist cotton to 100 degrees.

    Warming the dry cotton takes 11.5 kJ/m2 and its 9.4 g/m2 of water 3.1; less steam warms it
    by what it brings, its own water included.
    """
    dry, water = 0.1106 * 1300.0, 0.0094
    moist = cloth("cotton", 0.25, 110.6, 0.06, 1300.0, 9.4)
    assert 11.5e3 == pytest.approx(dry * 80.0, rel=0.01)
    assert 3.1e3 == pytest.approx(water * 4180.0 * 80.0, rel=0.02)
    shared = (dry + water * 4180.0) * 20.0 + 0.003 * (2.257e6 + 418e3)
    some = shared / (dry + (water + 0.003) * 4180.0)
    for grams, expected in ((6.5, 100.0), (3.0, some)):
        stack = Stack((moist,), exact(100.0), steam_gsm=exact(grams))
        state = begin(build_grid([stack], cells=1))
        assert expected == pytest.approx(state.temperature[0, 0], abs=0.2)
        assert water + min(grams, 6.5) / 1000.0 == pytest.approx(state.water[0, 0], abs=1e-4)


# baxter-1946 and schuhmeister (computed by the mixture formula): k of fibre, g/cm3 of the cloth,
# g/cm3 of the fibre, k at x = 0.21 and at x = 1/3.
MIXTURES = [
    ("wool felt", 0.20, 0.30, 1.31, 0.0395, 0.0436),
    ("cotton poplin", 0.30, 0.48, 1.52, 0.0525, 0.0619),
    ("polyester taffeta", 0.16, 0.60, 1.39, 0.050, 0.055),
    ("fleece", 0.16, 0.10, 1.39, 0.029, 0.030),
]


@pytest.mark.parametrize(("name", "fibre", "cloth_density", "density", "baxter", "third"), MIXTURES)
def test_mixture(
    name: str, fibre: float, cloth_density: float, density: float, baxter: float, third: float
) -> None:
    """The conductivity of fibre and air mixed, to the digits printed."""
    share = packing(cloth_density * 1000.0, 1.0, density)
    digits = 1e-4 if len(str(baxter)) > 5 else 6e-4
    assert baxter == pytest.approx(mixture_conductivity(fibre, share, BAXTER_WEIGHT), abs=digits)
    assert third == pytest.approx(
        mixture_conductivity(fibre, share, SCHUHMEISTER_WEIGHT), abs=digits
    )


@pytest.mark.parametrize(
    ("name", "dry", "regain", "moist"),
    [("cotton", 1250.0, 0.085, 1480.0), ("wool", 1360.0, 0.145, 1720.0)],
)
def test_moist_specific_heat(name: str, dry: float, regain: float, moist: float) -> None:
    """Moist specific heat (computed from morton-hearle-2008's dry values), within 15 J/(kg K)."""
    mixed = (dry + WATER_SPECIFIC_HEAT * regain) / (1.0 + regain)
    assert moist == pytest.approx(mixed, abs=15.0)


def test_erf_and_erfc_are_one() -> None:
    """The closed forms used here are the same function: erf + erfc = 1."""
    assert 1.0 == pytest.approx(float(erf(0.37) + erfc(0.37)), abs=1e-15)


# burn-time-table, second-hand, which agrees with moritz-henriques-1947: skin temperature, and the
# seconds (the shorter end of each span) after which a burn is serious.
SERIOUS_BURNS = [
    (49.0, 300.0),
    (52.0, 90.0),
    (55.0, 30.0),
    (57.0, 10.0),
    (60.0, 5.0),
    (63.0, 3.0),
    (66.0, 1.5),
    (68.0, 1.0),
]


@pytest.mark.parametrize(("skin", "seconds"), SERIOUS_BURNS)
def test_no_touch_limit_allows_a_serious_burn(skin: float, seconds: float) -> None:
    """Metal may never be touched for so long at the temperature of skin that then burns badly."""
    assert touch_limit("metal", seconds) < skin

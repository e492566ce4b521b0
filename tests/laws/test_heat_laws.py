"""Laws of the heat model, each stated as far as it is true and no further."""

from __future__ import annotations

import numpy as np
import pytest
from hypothesis import example, given, settings
from hypothesis import strategies as st
from msgspec.structs import replace

from advisor.heat.model.bands import draws_for, study, uncertain
from advisor.heat.model.burns import MATERIALS, touch_limit
from advisor.heat.model.cooling import press_then_lift, seconds_to_cool
from advisor.heat.model.grid import build_grid, cells_for
from advisor.heat.model.hardparts import PARTS
from advisor.heat.model.march import march
from advisor.heat.model.materials import WATER_SPECIFIC_HEAT, Layer, Range
from advisor.heat.model.modes import by_modes
from advisor.heat.model.solve import record_times, seconds_until, trace, trace_grid
from advisor.heat.model.stack import Stack
from advisor.heat.model.tridiagonal import solve_tridiagonal
from advisor.heat.model.water import begin

few = settings(max_examples=25, deadline=None)
fewer = settings(max_examples=12, deadline=None)
TIMES = record_times()


def exact(value: float) -> Range:
    """A property taken as certain."""
    return Range.exact(value)


@st.composite
def layers(draw: st.DrawFn, *, water: bool = False) -> Layer:
    """A cloth-like layer with certain properties; dry unless asked."""
    mm = draw(st.floats(0.08, 2.0))
    density = draw(st.floats(80.0, 700.0))  # kg/m3
    held = draw(st.floats(1.0, 80.0)) if water and draw(st.booleans()) else 0.0
    return Layer(
        draw(st.sampled_from(["shell", "lining", "facing"])),
        exact(mm),
        density * mm,
        exact(draw(st.floats(0.03, 0.3))),
        exact(draw(st.floats(900.0, 2000.0))),
        exact(held),
        binds_gsm=draw(st.floats(0.0, 0.15)) * density * mm if water else 0.0,
    )


@st.composite
def stacks(draw: st.DrawFn, *, water: bool = False, back: bool = False) -> Stack:
    """One to four layers from room temperature under a hotter sole; insulated unless asked."""
    chosen = draw(st.lists(layers(water=water), min_size=1, max_size=4))
    gaps = tuple(exact(draw(st.floats(2e-4, 3e-3))) for _ in chosen[1:])
    return Stack(
        tuple(chosen),
        exact(draw(st.floats(60.0, 230.0))),
        exact(draw(st.floats(5e-4, 5e-3))),
        gaps,
        back_h=draw(st.floats(2.0, 200.0)) if back else 0.0,
        vapour_down=exact(0.0),
    )


@few
@given(stacks(back=True), st.floats(1.0, 40.0))
def test_hotter_sole_never_leaves_a_dry_layer_cooler(stack: Stack, more: float) -> None:
    """Dry, at every moment and in every layer: a hotter sole is never the cooler choice."""
    cooler, hotter = stack, stack.at(exact(stack.sole.mid + more))
    found = trace([cooler, hotter]).hottest
    assert (found[1] >= found[0] - 1e-6).all()


@fewer
@given(stacks(water=True), st.floats(1.0, 40.0))
def test_hotter_sole_with_water_and_no_steam_driven_down(stack: Stack, more: float) -> None:
    """Damp, with all vapour leaving upwards: no layer gets to any temperature later.

    Later by no more, that is, than the time steps' own error of a few per cent.  Where steam is
    driven down the law is not claimed: what condenses below must boil again.
    """
    grid = build_grid([stack, stack.at(exact(stack.sole.mid + more))])
    course = trace_grid(grid, TIMES, split=2)
    for place in range(len(stack.layers)):
        for goal in (50.0, 90.0, 110.0, 150.0):
            cooler, hotter = seconds_until(course.times, course.hottest[:, :, place], goal)
            assert hotter <= cooler * 1.06 + 0.05


@few
@given(stacks())
def test_longer_press_never_leaves_a_dry_layer_cooler(stack: Stack) -> None:
    """Dry, from a room cooler than a steady sole: every layer only ever warms."""
    found = trace([stack]).hottest[0, 1:]
    assert (np.diff(found, axis=0) >= -1e-6).all()


@few
@given(layers(), stacks(), st.floats(0.2, 0.95))
def test_thinner_cloth_never_leaves_a_layer_below_cooler(
    cloth: Layer, below: Stack, part: float
) -> None:
    """Dry, steady sole, uniform start, insulated board: thinning the SAME cloth warms all below.

    True because every layer only warms and heat only flows down (then the thick solution is a
    lower solution of the thin problem); on cells of finite size up to 0.1 K.  Nothing is
    claimed of the cloth itself, whose own face is nearer to the sole.
    """
    thin = replace(
        cloth, thickness_mm=cloth.thickness_mm.times(part), mass_gsm=cloth.mass_gsm * part
    )
    gaps = (exact(1e-3), *below.contacts)
    thick_stack, thin_stack = (
        replace(below, layers=(top, *below.layers), contacts=gaps) for top in (cloth, thin)
    )
    found = trace([thick_stack, thin_stack], cells=16).hottest
    assert (found[1, :, 1:] >= found[0, :, 1:] - 0.1).all()


@few
@given(stacks(back=True))
def test_no_dry_layer_passes_the_sole(stack: Stack) -> None:
    """Dry: no layer is ever hotter than the sole or cooler than the room."""
    found = trace([stack])
    assert found.hottest.max() <= stack.sole.mid + 1e-6
    assert found.under.min() >= stack.ambient_c - 1e-6


@fewer
@given(stacks(water=True), st.floats(0.0, 1.0), st.floats(0.0, 20.0))
def test_no_moist_layer_passes_the_sole_or_boiling(stack: Stack, down: float, steam: float) -> None:
    """With water or steam: none passes the hotter of the sole and 100 degrees (3 K of stepping)."""
    wet = replace(stack, vapour_down=exact(down), steam_gsm=exact(steam))
    found = trace_grid(build_grid([wet]), TIMES)
    assert found.hottest.max() <= max(stack.sole.mid, 100.0) + 3.0
    assert found.cells.min() >= stack.ambient_c - 1.0


@few
@given(layers(), stacks(), st.sampled_from(["a", "b"]))
def test_identical_layers_commute(ply: Layer, below: Stack, first: str) -> None:
    """Two plies alike but for their names may change places: each place is as hot as before."""
    second = "b" if first == "a" else "a"
    gaps = (exact(1e-3), exact(1e-3), *below.contacts)
    one, other = (
        replace(
            below,
            layers=(replace(ply, name=upper), replace(ply, name=lower), *below.layers),
            contacts=gaps,
        )
        for upper, lower in ((first, second), (second, first))
    )
    found = trace([one, other]).hottest
    assert np.array_equal(found[0], found[1])


@few
@given(stacks(back=True))
def test_steady_state_is_resistances_in_series(stack: Stack) -> None:
    """After long enough the flow is the whole difference over the sum of all resistances."""
    parts = [x.thickness_mm.mid / 1000.0 / x.conductivity.mid for x in stack.layers]
    joints = [c.mid for c in stack.contacts]
    whole = stack.sole_contact.mid + sum(parts) + sum(joints) + 1.0 / stack.back_h
    flow = (stack.sole.mid - stack.ambient_c) / whole
    expected, here = [], stack.sole.mid - flow * stack.sole_contact.mid
    for part, joint in zip(parts, [*joints, 0.0], strict=True):
        expected.append(here)
        here -= flow * (part + joint)
    found = trace([stack], times=np.array([1e6])).over[0, -1]
    assert np.allclose(expected, found, atol=1e-4)


HARDLY_BINDS = Stack(
    layers=(
        Layer(
            "shell",
            thickness_mm=exact(1.0),
            mass_gsm=80.0,
            conductivity=exact(0.25),
            specific_heat=exact(900.0),
            water_gsm=exact(0.0),
            binds_gsm=1.78e-311,
        ),
    ),
    sole=exact(101.0),
    sole_contact=exact(0.00390625),
    contacts=(),
    back_h=2.0,
)
"""Binds water too little for any number to divide by, and is steamed a little above boiling."""
HARDLY_STEAMED = replace(
    HARDLY_BINDS, layers=(replace(HARDLY_BINDS.layers[0], binds_gsm=10.0),), ambient_c=20.0
)
"""Binds water well, and has as little of it."""


@fewer
@given(stacks(water=True, back=True), st.floats(0.0, 1.0), st.floats(0.0, 15.0))
@example(HARDLY_BINDS, 0.0, 1.0)
@example(HARDLY_STEAMED, 0.0, 2.225073858507e-311)
def test_energy_is_conserved(stack: Stack, down: float, steam: float) -> None:
    """What the cells gain is what came in at the ends less what the lost vapour carried off."""
    grid = build_grid([replace(stack, vapour_down=exact(down), steam_gsm=exact(steam))])
    before = float(((grid.dry + grid.water * WATER_SPECIFIC_HEAT) * grid.start).sum())
    state = begin(grid)
    _, state = march(grid, state, record_times(20.0))
    held = (state.capacity(grid) * state.temperature).sum(axis=1)
    balance = held + state.carried_off - before
    scale = abs(state.taken_in) + before
    assert (abs(balance - state.taken_in) <= 1e-8 * scale).all()
    assert (state.water >= 0.0).all()
    assert (state.bound >= 0.0).all()


@fewer
@given(stacks())
def test_both_solvers_agree_on_dry_stacks(stack: Stack) -> None:
    """From half a second on, steps in time and exact modes agree within 0.3 K on dry stacks."""
    grid = build_grid([stack])
    stepped, _ = march(grid, begin(grid), TIMES, split=2)
    late = TIMES >= 0.5
    assert np.allclose(by_modes(grid, TIMES)[:, late], stepped[:, late], atol=0.3)


@pytest.mark.parametrize("down", [0.0, 0.3, 0.7])
def test_usual_steps_against_much_finer_ones(down: float) -> None:
    """Times past boiling agree within 5 % with steps 12 times finer; 90 degrees is never late.

    Never late by more than 5 %: where steam condenses the usual steps are early, the cautious
    side for a limit.
    """
    damp = Layer("damp", exact(0.3), 120.0, exact(0.06), exact(1300.0), exact(60.0))
    shell = Layer("shell", exact(0.25), 120.0, exact(0.06), exact(1300.0), exact(9.0))
    felt = Layer("felt", exact(6.0), 900.0, exact(0.045), exact(1300.0))
    for plies in ((damp, shell, felt), (shell, shell, felt)):
        made = Stack(plies, exact(200.0), exact(2e-3), (exact(1e-3),) * 2)
        grid = build_grid([replace(made, vapour_down=exact(down))])
        usual, fine = (trace_grid(grid, TIMES, split=split) for split in (1, 12))
        for goal in (90.0, 110.0, 140.0):
            for place in range(3):
                found, true = (
                    float(seconds_until(t.times, t.hottest[:, :, place], goal)[0])
                    for t in (usual, fine)
                )
                assert found <= true * 1.05 + 0.05
                assert goal < 100.0 or found >= true * 0.95 - 0.05


@few
@given(st.integers(1, 12), st.integers(1, 40), st.integers(0, 2**31))
def test_halving_equals_full_solve(cases: int, size: int, seed: int) -> None:
    """Cyclic reduction gives the answer of a full solve, for any number of unknowns."""
    chance = np.random.default_rng(seed)
    lower, upper = -chance.random((2, cases, size - 1))
    main, right = 2.5 + chance.random((cases, size)), chance.random((cases, size))
    matrix = np.zeros((cases, size, size))
    here = np.arange(size)
    matrix[:, here, here] = main
    matrix[:, here[1:], here[:-1]], matrix[:, here[:-1], here[1:]] = lower, upper
    expected = np.linalg.solve(matrix, right[:, :, None])[:, :, 0]
    assert np.allclose(expected, solve_tridiagonal(lower, main, upper, right), atol=1e-12)


@fewer
@given(st.lists(stacks(water=True), min_size=2, max_size=3))
def test_company_changes_nothing(several: list[Stack]) -> None:
    """A stack solved among others is as hot as solved alone."""
    together = trace(several).hottest
    for place, stack in enumerate(several):
        alone = trace([stack]).hottest[0]
        assert np.array_equal(alone, together[place, :, : len(stack.layers)])


@fewer
@given(stacks(water=True), st.floats(0.0, 0.3), st.floats(40.0, 150.0))
def test_band_contains_the_nominal(stack: Stack, spread: float, goal: float) -> None:
    """The band of a temperature and of a time always holds the answer at the mid values."""
    loose = replace(
        stack,
        sole=Range(stack.sole.mid - 20.0, stack.sole.mid, stack.sole.mid + 30.0),
        layers=tuple(
            replace(
                x,
                conductivity=Range(
                    x.conductivity.mid * (1.0 - spread),
                    x.conductivity.mid,
                    x.conductivity.mid * (1.0 + spread),
                ),
            )
            for x in stack.layers
        ),
    )
    looked_at = study([loose], samples=8)
    middle = trace([loose], cells=cells_for(loose))
    for place in range(len(loose.layers)):
        band = looked_at.temperature(0, place, 5.0)
        assert band.low <= band.mid <= band.high
        assert np.isclose(band.mid, middle.at(5.0)[0, place], atol=1e-6)
        times = looked_at.seconds(0, place, goal)
        if times.mid is not None:
            assert times.low is not None
            assert times.low <= times.mid
            assert times.high is None or times.mid <= times.high
        else:
            assert times.high is None


@few
@given(stacks(water=True), st.integers(0, 9999))
def test_draws_are_repeatable_and_within_bounds(stack: Stack, seed: int) -> None:
    """The same seed draws the same; every draw lies between the ends; certain things stay."""
    loose = stack.at(Range(stack.sole.mid - 9.0, stack.sole.mid, stack.sole.mid + 9.0))
    one, other = draws_for(loose, 10, seed), draws_for(loose, 10, seed)
    assert np.array_equal(one, other)
    assert (abs(one) <= 1.0).all()
    still = [p for p in range(one.shape[1]) if p not in uncertain(loose)]
    assert not one[:, still].any()
    assert not one[0].any()


@fewer
@given(stacks(), st.floats(2.0, 15.0))
def test_lifted_layers_cool_towards_the_room(stack: Stack, press_s: float) -> None:
    """After the lift the hottest place only cools, and never below the room."""
    _, cooled = press_then_lift([stack], press_s)
    hottest = cooled.cells[0].max(axis=1)
    assert (np.diff(hottest) <= 0.05).all()
    assert cooled.cells.min() >= stack.ambient_c - 0.05


@given(st.sampled_from([*MATERIALS, "anything"]), st.floats(0.1, 1e5), st.floats(1.0, 100.0))
def test_longer_contact_never_allows_a_hotter_surface(
    material: str, seconds: float, times: float
) -> None:
    """Whatever the material: a longer touch bears no more, and unknown bears no more than metal."""
    assert touch_limit(material, seconds * times) <= touch_limit(material, seconds) + 1e-9
    assert touch_limit("anything", seconds) <= touch_limit(material, seconds) + 1e-9


@given(st.sampled_from(sorted(PARTS)), st.floats(20.0, 200.0), st.floats(0.0, 40.0))
def test_hotter_part_never_waits_less(name: str, start: float, more: float) -> None:
    """A part that starts hotter is touchable no sooner, and the three ends stay in order."""
    band = Range(start, start + more, start + 2.0 * more)
    later = Range(start + 5.0, start + 5.0 + more, start + 5.0 + 2.0 * more)
    first, second = (seconds_to_cool(PARTS[name], b) for b in (band, later))
    assert first.low <= second.low
    assert first.mid <= second.mid
    assert first.high <= second.high

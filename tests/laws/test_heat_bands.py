"""The least and the most that are printed: no draw within the ranges stated passes them."""

from __future__ import annotations

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from advisor.decide.evaluate import judge
from advisor.heat.model.bands import study
from advisor.heat.model.cooling import press_then_lift
from advisor.heat.model.corners import corners_of, free_of, passed_by
from advisor.heat.model.grid import properties
from advisor.heat.model.materials import Range
from advisor.heat.model.rhythm import COOL_C, LONGEST_REST, rests_after
from advisor.heat.model.solve import ASKED, between, course, record_times, seconds_until
from advisor.heat.model.stack import Stack, sole_for_dots
from advisor.heat.questions import SAMPLES
from advisor.heat.stacks import plies, pressed, presses
from advisor.project.quick import quick_garment
from tests.typed import shipped as known

DRAWS = 400


def any_draws(stack: Stack, seed: int) -> np.ndarray:
    """Draws of all properties, each joint by itself: half of them even, half at the ends."""
    free = free_of(stack)
    found = np.random.default_rng(seed).uniform(-1.0, 1.0, (DRAWS, free.size))
    found[DRAWS // 2 :] = np.sign(found[DRAWS // 2 :])
    return found * free


def none_passes(stack: Stack, seed: int) -> None:
    """Of the draws, none is hotter, cooler, sooner or later than the band of each layer."""
    looked_at = study([stack], samples=SAMPLES)
    drawn = course([stack], [any_draws(stack, seed)], record_times())
    for place, layer in enumerate(stack.layers):
        if layer.role == "board":
            continue
        warmth = drawn.hottest[:, :, place]
        for second in ASKED:
            band = looked_at.temperature(0, place, second)
            found = between(drawn.times, warmth[:, :, None], second)[:, 0]
            assert band.low <= found.min() + 1e-6, (layer.name, second)
            assert found.max() <= band.high + 1e-6, (layer.name, second)
        for goal in (70.0, 110.0, 150.0):
            times = looked_at.seconds(0, place, goal)
            reached = seconds_until(drawn.times, warmth, goal)
            assert (np.inf if times.low is None else times.low) <= reached.min(), layer.name
            assert times.high is None or reached.max() <= times.high, layer.name


GARMENTS = [
    ("cotton poplin", "viscose lining"),
    ("pure linen suiting", "nylon organza"),
    ("wool crepe", "silk organza", "polyester lining"),
    ("silk velvet", "cupro lining"),
]


@pytest.mark.parametrize("cloths", GARMENTS, ids=lambda c: c[0])
def test_no_draw_passes_the_band_of_a_press(cloths: tuple[str, ...]) -> None:
    """Every way of pressing a garment: "at most" is the most of 400 draws, and more."""
    judgement = judge(quick_garment(list(cloths), known()), known())
    ways = {press.way: press.stack for press in presses(judgement, known())[1]}
    for seed, stack in enumerate(ways.values()):
        none_passes(stack, seed)


@pytest.mark.parametrize("moisture", ["steam", "damp cloth"])
@pytest.mark.parametrize("cloths", [("cotton lawn",), ("pure wool coating 500 g/m2", "linen")])
def test_no_draw_passes_the_band_of_a_moist_press(moisture: str, cloths: tuple[str, ...]) -> None:
    """The same with steam and under a damp cloth, the cloths with the water of the room."""
    garment = quick_garment(list(cloths), known())
    names = tuple(use.cloth for use in garment.seams[0].uses)
    layers = plies(names, (150.0,) * len(names), garment, known(), moist=True)
    laid = "cotton cloth" if moisture == "damp cloth" else "none"
    none_passes(pressed(layers, sole_for_dots(3), laid, moisture), 7)


@pytest.mark.parametrize("cloths", GARMENTS[:2], ids=lambda c: c[0])
def test_no_draw_rests_longer_or_shorter(cloths: tuple[str, ...]) -> None:
    """Of draws inside the ranges and at their ends none cools sooner or later than is told."""
    judgement = judge(quick_garment(list(cloths), known()), known())
    stack = presses(judgement, known())[1][0].stack
    (told,) = rests_after([stack], 10.0)
    draws = any_draws(stack, 3)[DRAWS // 2 - 30 : DRAWS // 2 + 60]
    _, cooled = press_then_lift([stack], 10.0, [draws], rest=record_times(LONGEST_REST, 1.1))
    shown = [i for i, x in enumerate(stack.layers) if x.role not in ("press cloth", "board")]
    warmest = cooled.hottest[:, :, shown].max(axis=2)
    rests = seconds_until(cooled.times, -warmest, -COOL_C)
    assert told.low is not None
    assert told.low <= rests.min()
    assert rests.max() <= (np.inf if told.high is None else told.high)


@settings(max_examples=20, deadline=None)
@given(st.integers(0, 3), st.booleans())
def test_corners_lie_within_the_ranges(which: int, certain_sole: bool) -> None:
    """A corner moves nothing that is certain and nothing beyond its range."""
    judgement = judge(quick_garment(list(GARMENTS[which]), known()), known())
    stack = presses(judgement, known())[1][0].stack
    if certain_sole:
        stack = stack.at(Range.exact(stack.sole.mid))
    corners, free = corners_of(stack), free_of(stack)
    assert corners.shape == (len({c.tobytes() for c in corners}), len(properties(stack)))
    assert (np.abs(corners) <= free).all()
    assert passed_by(stack) > 0.0


def test_a_stack_of_certain_things_has_no_band() -> None:
    """Where nothing is uncertain, least and most are the one answer."""
    judgement = judge(quick_garment(["cotton poplin"], known()), known())
    made = presses(judgement, known())[1][0].stack
    plain = Stack(made.layers[-1:], Range.exact(150.0), Range.exact(0.002))
    layer = plain.layers[0]
    sure = Stack(
        (
            type(layer)(
                "felt",
                Range.exact(6.0),
                layer.mass_gsm,
                Range.exact(layer.conductivity.mid),
                Range.exact(layer.specific_heat.mid),
            ),
        ),
        plain.sole,
        plain.sole_contact,
    )
    band = study([sure]).temperature(0, 0, 5.0)
    assert band.low == band.mid == band.high

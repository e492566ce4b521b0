"""A strip over a table edge against another solver, and the forms that are in use.

astm-d1388 and bs-3356: c is half the reach at 41.5 degrees. The short form is the one that F. T.
Peirce gave in 1930 (memory), c = reach (cos(a/2) / (8 tan a))^(1/3).
"""

from __future__ import annotations

import math

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from scipy.integrate import solve_bvp

from advisor.answer.stiffwords import stiff_says
from advisor.construction.seamwork import seamworks
from advisor.craft.stiffness import (
    LEAST_SINK,
    MOST_SINK,
    SLOPE,
    bending_length,
    hanging,
    rigidity,
    together,
)
from advisor.errors import InputError
from advisor.project import bending
from tests.unit.construction.build_cases import judged, known


def elastica(load: float) -> tuple[float, float]:
    """Slope in degrees of the line from edge to end, and how far it sinks, of a strip of length 1.

    `load` is w L³ / G = (L / c)³. Boundary values by collocation: clamped level at the edge.
    """
    s = np.linspace(0.0, 1.0, 200)
    guess = np.vstack([min(load / 6, 1.2) * s, np.zeros_like(s)])
    found = solve_bvp(
        lambda x, y: np.vstack([y[1], -load * (1 - x) * np.cos(y[0])]),
        lambda a, b: np.array([a[0], b[1]]),
        s,
        guess,
        tol=1e-8,
        max_nodes=20000,
    )
    fine = np.linspace(0.0, 1.0, 2001)
    theta = found.sol(fine)[0]
    along, down = np.trapezoid(np.cos(theta), fine), np.trapezoid(np.sin(theta), fine)
    return math.degrees(math.atan2(down, along)), float(down)


@pytest.mark.parametrize("load", [1.0, 3.0, 8.0, 15.0, 30.0])
def test_the_sinking_gives_the_bending_length_of_another_solver(load: float) -> None:
    """From how far the end sinks the bending length comes out within 0.3 %."""
    _, down = elastica(load)
    assert load ** (-1 / 3) * 100 == pytest.approx(bending_length(100.0, down * 100), rel=0.003)


def test_half_the_reach_at_the_standard_slope() -> None:
    """At 41.5 degrees the standard's half is right to 0.1 %, the short form 1.9 % too much."""
    slope, down = elastica(8.0)
    assert pytest.approx(slope, abs=0.05) == SLOPE
    assert 50.0 == bending_length(100.0)
    assert 50.0 == pytest.approx(bending_length(100.0, down * 100), rel=0.001)
    a = math.radians(SLOPE)
    short = (math.cos(a / 2) / (8 * math.tan(a))) ** (1 / 3)
    assert 1.019 == pytest.approx(short / 0.5, abs=0.001)
    assert 1.058 == pytest.approx((short / 0.5) ** 3, abs=0.002)


def test_eight_down_for_nine_along_is_the_slope() -> None:
    """The slope that she can fold of card."""
    assert pytest.approx(math.degrees(math.atan2(8, 9)), abs=0.2) == SLOPE


def test_the_rigidity_in_plain_units() -> None:
    """100 g/m² and 20 mm: 0.1 kg/m² × 9.80665 m/s² × (0.02 m)³ = 7.85 µN m."""
    assert 7.845 == pytest.approx(rigidity(100.0, 20.0), abs=0.001)


@settings(max_examples=40)
@given(st.floats(20, 200), st.floats(LEAST_SINK + 0.001, MOST_SINK - 0.06), st.floats(0.005, 0.05))
def test_what_sinks_more_is_limper(reach: float, share: float, more: float) -> None:
    """A strip of the same reach that sinks further has the shorter bending length."""
    assert bending_length(reach, reach * share) > bending_length(reach, reach * (share + more))


@given(st.floats(20, 300), st.floats(1.0, 3.0))
def test_size_does_not_matter(reach: float, times: float) -> None:
    """Twice the reach and twice the sinking are twice the bending length: no unit is in it."""
    one, other = (
        bending_length(reach, reach * 0.4),
        bending_length(reach * times, reach * times * 0.4),
    )
    assert other == pytest.approx(one * times)


@given(st.lists(st.tuples(st.floats(20, 500), st.floats(5, 60)), min_size=1, max_size=4))
def test_layers_held_as_one(layers: list[tuple[float, float]]) -> None:
    """No limper than the limpest, no stiffer than the stiffest; rigidities sum to the whole's."""
    both = together(layers)
    lengths = [c for _, c in layers]
    assert min(lengths) - 1e-6 <= both <= max(lengths) + 1e-6
    whole = rigidity(sum(w for w, _ in layers), both)
    assert whole == pytest.approx(sum(rigidity(w, c) for w, c in layers))


def test_the_ends_of_a_strip() -> None:
    """A strip that hangs nearly straight reaches its own length down; a stiff one hardly sinks."""
    reach, along, down = hanging(1e-3)
    assert along == pytest.approx(1.0, abs=1e-3)
    assert down < 0.01
    assert reach < 0.3


@pytest.mark.parametrize("sinks", [1.0, 95.0, 0.0, -3.0])
def test_what_tells_nothing_is_refused(sinks: float) -> None:
    """A strip that hardly sinks, or hangs straight down, tells no stiffness."""
    with pytest.raises(ValueError, match="sink"):
        bending_length(100.0, sinks)


HEAD = (
    "garment: Frock\nfabrics:\n"
    "  shell: {fabric: poplin, fibres: {cotton: 100}, weight: 120 g/m2, overhang: 40 mm}\n"
    "  canvas: {fabric: organza, fibres: {silk: 100}, weight: 30 g/m2, overhang: 70 mm}\n"
    "  frill: {fabric: chiffon, fibres: {silk: 100}, overhang: 22 mm, sinks: 15 mm}\nseams:\n"
)


def says(seam: str, head: str = HEAD) -> str:
    """What is told of a seam in building it."""
    judgement = judged(seam, head)
    (work,) = seamworks(judgement, known())
    return " ".join(stiff_says(work, "metric"))


def test_gathers_are_told_crisp_from_soft() -> None:
    """A chiffon that hangs nearly straight down falls close; stiff organza stands away."""
    frill = "  - {name: frill, layers: [shell, {use: frill, fullness: 2}], length: 1 m}\n"
    assert "soft and fall close" in says(frill)
    assert "crisp and stand away" in says(frill.replace("use: frill", "use: canvas"))


def test_an_underlining_is_matched_to_its_cloth() -> None:
    """20 mm at 120 g/m2 and 35 mm at 30 g/m2: (9.41 + 12.61) / 9.41 is 2.3 times as stiff."""
    held = says("  - {name: front, kind: underlining, layers: [shell, canvas], length: 60 cm}\n")
    assert "shell bends at 20 mm, canvas at 35 mm" in held
    assert "2.3 times as stiff" in held
    assert "Its edge will show" in held


@pytest.mark.parametrize(
    ("wrong", "told"),
    [
        ("overhang: 60 mm, sinks: 1 mm", "tells no stiffness"),
        ("sinks: 20 mm", "without a reach"),
        ("overhang: 60", "has no unit"),
        ("overhang: 3 m", "cannot be right"),
    ],
)
def test_what_was_measured_wrongly_is_refused(wrong: str, told: str) -> None:
    """One clear message at the place."""
    head = HEAD.replace("overhang: 22 mm, sinks: 15 mm", wrong)
    with pytest.raises(InputError, match=told):
        judged("  - {name: side, layers: [shell, shell]}\n", head)


def test_both_rooms_know_the_same_ends() -> None:
    """What a project refuses is what the formula cannot tell."""
    assert (LEAST_SINK, MOST_SINK) == (bending.LEAST_SINK, bending.MOST_SINK)

"""How the claims of one place on one aspect meet, and which answer is picked."""

from __future__ import annotations

import pytest

from advisor.claims.combine import decide, full_set, meet
from advisor.claims.valuesets import Choice, Span
from tests.unit.decide.engine_cases import aspect, options, origins, span, words

SIZE = aspect("needle.size")
POINT = aspect("needle.point")
IRON = aspect("press.temperature")
DAMP = aspect("press.moisture")
LENGTH = aspect("stitch.length")


def test_musts_leave_what_they_share() -> None:
    """At most 80 and at least 70 leave 70 to 80, and both are the reason."""
    found = decide(SIZE, [span(55, 80, who="sheer"), span(70, 130, who="denim")])
    assert Span(70, 80) == found.allowed == found.advised
    assert {"fabric sheer", "fabric denim"} == set(origins(found.because))
    assert () == found.given_up == found.clash


def test_nothing_said_leaves_everything() -> None:
    """Where nobody speaks, everything is allowed and the preferred end is picked."""
    found = decide(SIZE, [])
    assert Span(55, 130) == found.allowed
    assert 55 == found.pick


def test_a_should_narrows_only_what_is_advised() -> None:
    """A wish narrows the advice and never what is allowed."""
    found = decide(SIZE, [span(55, 80), span(60, 70, "should", who="b")])
    assert Span(55, 80) == found.allowed
    assert Span(60, 70) == found.advised


def test_a_should_that_would_leave_nothing_is_given_up() -> None:
    """The verdict says which wish it could not meet."""
    found = decide(SIZE, [span(55, 80), span(90, 100, "should", who="b")])
    assert Span(55, 80) == found.advised
    assert ["fabric b"] == origins(found.given_up)
    assert ["fabric a"] == origins(found.because)


@pytest.mark.parametrize("turned", [False, True])
def test_the_better_founded_should_comes_first(turned: bool) -> None:
    """Of two wishes that clash the one with the better source is met, in whatever order said."""
    said = [
        span(60, 70, "should", who="memory", rank=4),
        span(80, 90, "should", who="book", rank=1),
    ]
    found = decide(SIZE, said[::-1] if turned else said)
    assert Span(80, 90) == found.advised
    assert ["fabric memory"] == origins(found.given_up)


def test_a_should_comes_before_a_may_of_better_standing() -> None:
    """Strength counts before standing."""
    found = decide(SIZE, [span(60, 70, "may", who="taste", rank=0), span(80, 90, "should", rank=4)])
    assert ["fabric taste"] == origins(found.given_up)


def test_among_equal_shoulds_the_preferred_end_comes_first() -> None:
    """Needles lean to the fine end and irons to the hot one, where standing decides nothing."""
    fine = decide(SIZE, [span(60, 70, "should", who="z"), span(90, 100, "should", who="a")])
    assert Span(60, 70) == fine.advised
    hot = decide(
        IRON,
        [
            span(100, 120, "should", who="a", of=IRON.id),
            span(150, 170, "should", who="z", of=IRON.id),
        ],
    )
    assert Span(150, 170) == hot.advised


def test_the_same_claim_twice_counts_once() -> None:
    """Two seams' worth of the same words are one reason."""
    found = decide(SIZE, [span(55, 80), span(55, 80)])
    assert 1 == len(found.because)


def test_clashing_guards_leave_nothing() -> None:
    """Where two guards against harm clash nothing is allowed, nothing picked, both are named."""
    found = decide(SIZE, [span(55, 70, who="a"), span(80, 130, who="b")])
    assert found.allowed.is_empty
    assert found.pick is None
    assert {"fabric a", "fabric b"} == set(origins(found.clash))


def test_a_need_gives_way_to_a_guard() -> None:
    """Linen that needs 170 and nylon that bears 110: 110 it is, and the clash is told."""
    need = span(170, 210, risk="result", who="linen", of=IRON.id)
    guard = span(20, 110, who="nylon", of=IRON.id)
    found = decide(IRON, [need, guard])
    assert Span(20, 110) == found.allowed
    assert ["fabric linen"] == origins(found.given_up)
    assert ["fabric nylon"] == origins(found.because)
    assert {"fabric linen", "fabric nylon"} == set(origins(found.clash))
    assert 110 == found.pick


def test_of_two_needs_the_one_that_fits_is_kept() -> None:
    """A need that the guards allow still counts when another is given up."""
    found = decide(
        IRON,
        [
            span(170, 210, risk="result", who="linen", of=IRON.id),
            span(90, 210, risk="result", who="glue", of=IRON.id),
            span(20, 110, who="nylon", of=IRON.id),
        ],
    )
    assert Span(90, 110) == found.allowed
    assert ["fabric linen"] == origins(found.given_up)


def test_injury_is_a_guard_as_damage_is() -> None:
    """Whatever can hurt stands against a need."""
    found = decide(
        SIZE, [span(100, 130, risk="result", who="thick"), span(55, 80, risk="injury", who="zip")]
    )
    assert Span(55, 80) == found.allowed
    assert ["fabric thick"] == origins(found.given_up)


def test_needs_alone_that_clash_leave_nothing() -> None:
    """With no guard to side with, neither of two needs is preferred."""
    found = decide(
        POINT,
        [
            options(POINT.id, ["sharp"], risk="result", who="a"),
            options(POINT.id, ["ballpoint"], risk="result", who="b"),
        ],
    )
    assert found.allowed.is_empty
    assert found.pick is None


def test_options_meet_in_what_they_share() -> None:
    """`universal or sharp` and `not universal` leave sharp."""
    found = decide(
        POINT,
        [
            options(POINT.id, ["universal", "sharp"], who="a"),
            options(POINT.id, ["sharp", "ballpoint"], who="b"),
        ],
    )
    assert ["sharp"] == words(found)
    assert 1.0 == found.pick


def test_the_first_best_that_is_still_allowed_is_picked() -> None:
    """The best of the strongest and best founded claim counts, unless another took it away."""
    both = ["universal", "sharp"]
    said = [
        options(POINT.id, both, "should", who="a", rank=1, best="sharp"),
        options(POINT.id, both, "should", who="b", rank=2, best="universal"),
    ]
    assert 1.0 == decide(POINT, said).pick
    barred = options(POINT.id, ["universal", "ballpoint"], who="c")
    assert 0.0 == decide(POINT, [*said, barred]).pick


def test_without_a_best_the_first_option_is_picked() -> None:
    """Options are written best first."""
    assert 1.0 == decide(POINT, [options(POINT.id, ["sharp", "ballpoint"])]).pick


@pytest.mark.parametrize(
    ("of", "low", "high", "expected"),
    [
        ("needle.size", 60, 90, 60),  # prefer: low
        ("press.temperature", 60, 90, 90),  # prefer: high
        ("stitch.length", 2, 3, 2.5),  # prefer: middle, in halves
        ("stitch.length", 2.1, 2.3, 2.2),  # no half inside, so the middle itself
        ("press.moisture", 1, 2, 1),
    ],
)
def test_an_end_is_picked_where_nobody_names_a_best(
    of: str, low: float, high: float, expected: float
) -> None:
    """The aspect says which end; a middle is a round number where there is one."""
    found = decide(aspect(of), [span(low, high, of=of)])
    assert found.pick == pytest.approx(expected)


def test_a_best_outside_what_is_left_is_not_picked() -> None:
    """An answer is always inside the advice."""
    found = decide(SIZE, [span(55, 80), span(70, 100, "should", best=90, who="b")])
    assert Span(70, 80) == found.advised
    assert 70 == found.pick


def test_the_iron_starts_at_the_lowest_figure_anybody_published() -> None:
    """A lower value of weaker standing lowers where to start and not the limit."""
    found = decide(
        IRON,
        [
            span(20, 150, who="wool", best=110, of=IRON.id),
            span(20, 200, who="cotton", best=180, of=IRON.id),
        ],
    )
    assert Span(20, 150) == found.advised
    assert 110 == found.pick


def test_the_iron_starts_inside_what_is_advised() -> None:
    """A lowest figure below what the cloth needs is raised to the need, never above the limit."""
    found = decide(
        IRON,
        [
            span(20, 200, best=110, who="a", of=IRON.id),
            span(150, 210, risk="result", who="b", of=IRON.id),
        ],
    )
    assert 150 == found.pick


def test_a_scale_meets_as_numbers_do() -> None:
    """At most damp and at least damp leave the damp cloth."""
    found = decide(
        DAMP, [span(0, 1, of=DAMP.id, who="a"), span(1, 2, "should", of=DAMP.id, who="b")]
    )
    assert ["damp cloth"] == words(found, advised=True)
    assert 1 == found.pick


def test_a_span_and_a_choice_never_meet() -> None:
    """Asking two kinds to meet is our mistake and says so."""
    with pytest.raises(TypeError, match="cannot meet"):
        meet(Span(1, 2), Choice(1))


def test_everything_of_an_aspect() -> None:
    """A range is full from end to end, options are full with every one of them."""
    assert Span(55, 130) == full_set(SIZE)
    assert Span(0, 2) == full_set(DAMP)
    assert Choice(0b111) == full_set(POINT)

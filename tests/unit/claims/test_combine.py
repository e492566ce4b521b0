"""How the claims of one place on one aspect meet, and which answer is picked."""

from __future__ import annotations

import pytest
from msgspec.structs import replace

from advisor.claims.claimsets import full_set, meet
from advisor.claims.combine import USUAL, decide, picking
from advisor.claims.speakers import Said
from advisor.claims.valuesets import Choice, Span
from advisor.claims.whose_word import against, deciders
from advisor.knowledge.model import Aspect
from tests.unit.decide.engine_cases import aspect, options, origins, span, words

SIZE = aspect("needle.size")
POINT = aspect("needle.point")
IRON = aspect("press.temperature")
DAMP = aspect("press.moisture")
LENGTH = aspect("stitch.length")


def as_said(of: Aspect, said: Said) -> Said:
    """A should with the purposes that its aspect gives to its ends."""
    low, high = (end or "look" for end in of.ends)
    first, last = said.claim.span or (of.low, of.high)
    ends = (low if first > of.low else high, high if last < of.high else low)
    return replace(said, claim=replace(said.claim, ends=ends))


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
        span(2, 2.5, "should", who="memory", rank=4, of=LENGTH.id),
        span(3, 3.5, "should", who="book", rank=1, of=LENGTH.id),
    ]
    found = decide(LENGTH, said[::-1] if turned else said)
    assert Span(3, 3.5) == found.advised
    assert ["fabric memory"] == origins(found.given_up)


def test_a_should_comes_before_a_may_of_better_standing() -> None:
    """Strength counts before standing."""
    found = decide(SIZE, [span(60, 70, "may", who="taste", rank=0), span(80, 90, "should", rank=4)])
    assert ["fabric taste"] == origins(found.given_up)


def test_among_equal_wishes_the_gentle_end_comes_first() -> None:
    """Where standing decides nothing the lower end is met."""
    short = [span(2, 2.5, "should", who="z", of=LENGTH.id)]
    long = [span(3, 4, "should", who="a", of=LENGTH.id)]
    found = decide(LENGTH, long + short)
    assert Span(2, 2.5) == found.advised
    assert ["fabric a"] == origins(found.given_up)


@pytest.mark.parametrize("turned", [False, True])
def test_neither_a_fine_needle_nor_a_strong_one_wins_in_silence(turned: bool) -> None:
    """60 to 70 beside 80 to 90: both give way by name, and the size between them is picked."""
    said = [
        span(60, 70, "should", who="light", best=65, rank=0),
        span(80, 90, "should", who="heavy", best=90, rank=4),
    ]
    found = decide(SIZE, said[::-1] if turned else said)
    assert Span(60, 90) == found.advised
    assert 75 == found.pick
    assert [(55, 70), (80, 130)] == sorted(s.claim.span or (0, 0) for s in found.given_up)
    assert {(60, 130), (55, 90)} == {s.claim.span for s in found.because}


def test_of_unequal_wishes_for_a_needle_the_weightier_is_met() -> None:
    """What holds the seam comes before what only looks well."""
    heavy = span(80, 90, "should", who="stack")
    heavy = replace(heavy, claim=replace(heavy.claim, ends=("seam", "seam")))
    found = decide(SIZE, [span(60, 70, "should", who="light"), heavy])
    assert Span(80, 90) == found.advised
    assert ["fabric light"] == origins(found.given_up)


def test_an_end_that_guards_is_never_given_up() -> None:
    """A cloth's own "at most" holds against any wish for more, however well that is founded."""
    cap = span(20, 150, "should", who="lace", rank=4, of=IRON.id)
    wish = span(160, 210, "should", who="cotton", rank=0, of=IRON.id)
    found = decide(IRON, [as_said(IRON, wish), as_said(IRON, cap)])
    assert Span(20, 150) == found.allowed == found.advised
    assert 150 == found.pick
    assert ["fabric cotton"] == origins(found.given_up)
    assert ["fabric lace"] == origins(found.because)
    assert () == found.clash


def test_of_two_ends_one_may_be_met_alone() -> None:
    """110 to 150 beside at most 80: the wish for 110 gives way and the guard at 150 stays."""
    both = as_said(IRON, span(110, 150, "should", who="silk", of=IRON.id))
    found = decide(IRON, [both, span(20, 80, who="film", of=IRON.id)])
    assert Span(20, 80) == found.advised
    assert [(110, 210)] == [s.claim.span for s in found.given_up]
    assert [(20, 80)] == [s.claim.span for s in found.because]
    bounding = decide(IRON, [both, span(20, 105, risk="result", who="film", of=IRON.id)])
    assert [(20, 105)] == [s.claim.span for s in bounding.because]


def test_a_need_that_meets_a_wish_that_guards_is_a_clash() -> None:
    """Wool that needs a damp cloth beside a silk that water marks: two words that do not meet."""
    need = span(1, 2, risk="result", who="wool", of=DAMP.id)
    cap = as_said(DAMP, span(0, 0, "should", who="silk", of=DAMP.id))
    found = decide(DAMP, [need, cap])
    assert Span(0, 0) == found.allowed
    assert ["fabric wool"] == origins(found.given_up)
    assert {"fabric wool", "fabric silk"} == set(origins(found.clash))


def test_a_clash_names_only_what_is_insisted_on() -> None:
    """The wishing end of a two-sided claim is no part of a clash."""
    both = as_said(IRON, span(110, 120, "should", who="silk", of=IRON.id))
    found = decide(IRON, [both, span(170, 210, risk="result", who="linen", of=IRON.id)])
    assert {(20, 120), (170, 210)} == {s.claim.span for s in found.clash}


def test_two_guards_that_do_not_meet_leave_nothing() -> None:
    """A needle that breaks below 90 and a cloth that is holed above 80."""
    heavy = span(90, 130, "should", who="denim")
    heavy = replace(heavy, claim=replace(heavy.claim, ends=("machine", "machine")))
    found = decide(SIZE, [heavy, span(55, 80, who="sheer")])
    assert found.allowed.is_empty
    assert found.pick is None
    assert {"fabric denim", "fabric sheer"} == set(origins(found.clash))


def test_the_size_nearest_to_the_heavy_cloth_is_picked() -> None:
    """Where a heavy cloth cannot have its size, it gets the strongest needle that all bear."""
    heavy = as_said(SIZE, span(90, 100, "should", who="coating"))
    light = as_said(SIZE, span(60, 70, "should", who="chiffon"))
    found = decide(SIZE, [span(75, 80, who="rule"), heavy, light])
    assert 80 == found.pick
    assert {"fabric coating", "fabric chiffon"} == set(origins(found.given_up))


@pytest.mark.parametrize("strength", ["should", "may"])
def test_too_much_is_never_picked_where_somebody_wants_less(strength: str) -> None:
    """A weaker voice for less lowers the pick, and a taste never narrows what is advised."""
    found = decide(
        DAMP,
        [
            as_said(DAMP, span(0, 2, "should", best=2, rank=0, who="wool", of=DAMP.id)),
            as_said(DAMP, span(0, 2, strength, best=1, rank=4, who="silk", of=DAMP.id)),
        ],
    )
    assert Span(0, 2) == found.advised
    assert 1 == found.pick


def test_a_taste_for_less_lowers_the_pick_and_not_the_advice() -> None:
    """`may` chooses inside what is advised."""
    taste = span(20, 120, "may", who="maker", of=IRON.id)
    found = decide(IRON, [span(20, 150, of=IRON.id), taste])
    assert Span(20, 150) == found.advised
    assert 120 == found.pick


def test_who_stands_against_a_wish_is_named() -> None:
    """The guard that a wish gave way to, and nobody else."""
    found = decide(
        IRON,
        [
            span(20, 110, who="nylon", of=IRON.id),
            span(20, 200, who="cotton", of=IRON.id),
            as_said(IRON, span(160, 210, "should", who="linen", of=IRON.id)),
        ],
    )
    (lost,) = found.given_up
    assert ["fabric nylon"] == origins(against(found, lost))


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


def test_where_nobody_names_a_best_any_will_do() -> None:
    """The order of a register decides nothing; one option that is left is the answer."""
    both = options(POINT.id, ["sharp", "ballpoint"])
    assert decide(POINT, [both]).pick is None
    assert not decide(POINT, [both]).advised.is_empty
    assert 1.0 == decide(POINT, [both, options(POINT.id, ["sharp"], who="b")]).pick


def test_the_usual_choice_is_picked_on_its_own_word() -> None:
    """Where the trade has one it speaks last, and only while nobody names a best."""
    usual = replace(POINT, usually=(2, 1), usually_sources=("habit",))
    found = decide(usual, [options(POINT.id, ["universal", "sharp", "ballpoint"])])
    assert 2.0 == found.pick
    assert (USUAL, ("habit",)) == (found.because[-1].who, found.because[-1].claim.sources)
    assert found.because[-1] in deciders(found)
    named = options(POINT.id, ["universal", "sharp", "ballpoint"], "may", best="universal")
    assert 0.0 == decide(usual, [named]).pick
    assert USUAL not in [s.who for s in decide(usual, [named]).because]
    ruled_out = decide(usual, [options(POINT.id, ["universal", "sharp"])])
    assert 1.0 == ruled_out.pick
    assert (
        decide(replace(usual, usually=(0,)), [options(POINT.id, ["sharp", "ballpoint"])]).pick
        is None
    )


def test_another_pick_has_its_own_reason_and_tastes_give_way() -> None:
    """A finish that follows its seam is not told as the usual one."""
    usual = replace(POINT, usually=(0,), usually_sources=("habit",))
    taste = options(POINT.id, ["universal", "ballpoint"], "may", who="t")
    found = picking(decide(usual, [options(POINT.id, ["universal", "sharp"]), taste]), 1, "So.")
    assert 1.0 == found.pick
    assert ["fabric a", f"aspect {POINT.id}"] == origins(found.because)
    assert "So." == found.because[-1].claim.why
    assert ["fabric t"] == origins(found.given_up)


@pytest.mark.parametrize(
    ("of", "low", "high", "expected"),
    [
        ("needle.size", 60, 90, 60),  # prefer: low
        ("press.temperature", 60, 90, 90),  # prefer: limit
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

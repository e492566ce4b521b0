"""The two kinds of set, by small cases; the laws of their meeting stand in tests/laws."""

from __future__ import annotations

from advisor.claims.valuesets import Choice, Span


def test_spans_meet_in_what_they_share() -> None:
    """60 to 90 and 80 to 110 share 80 to 90."""
    assert Span(80, 90) == Span(60, 90) & Span(80, 110)


def test_spans_that_touch_share_one_number() -> None:
    """Both ends belong to a span, so that 60 to 80 and 80 to 90 share 80."""
    met = Span.between(60, 80) & Span.between(80, 90)
    assert not met.is_empty
    assert Span(80, 80) == met


def test_spans_apart_share_nothing() -> None:
    """60 to 70 and 80 to 90 leave an empty span, and the empty one holds no number."""
    met = Span(60, 70) & Span(80, 90)
    assert met.is_empty
    assert not any(number in met for number in (60, 70, 75, 80, 90))


def test_a_number_is_in_a_span_at_its_ends() -> None:
    """The ends count, what lies beyond does not, and a word is never in it."""
    assert [False, True, True, False] == [n in Span(60, 70) for n in (59.9, 60, 70, 70.1)]
    assert "60" not in Span(60, 70)


def test_a_narrower_span_is_inside_a_wider_one() -> None:
    """Inside means at both ends; the empty span is inside every span."""
    assert Span(60, 70) <= Span(60, 80)
    assert not Span(50, 70) <= Span(60, 80)
    assert not Span(60, 90) <= Span(60, 80)
    assert Span(2, 1) <= Span(60, 60)


def test_choices_meet_in_what_they_share() -> None:
    """Options 0, 1, 2 and 1, 2, 3 share 1 and 2."""
    assert Choice.one_of(1, 2) == Choice.one_of(0, 1, 2) & Choice.one_of(1, 2, 3)


def test_choices_apart_share_nothing() -> None:
    """Options 0 and 1 share nothing."""
    met = Choice.one_of(0) & Choice.one_of(1)
    assert met.is_empty
    assert () == met.options()


def test_an_option_is_in_a_choice_by_its_number() -> None:
    """Only a whole number that was named is in it."""
    choice = Choice.one_of(0, 3)
    assert [True, False, False, True, False] == [n in choice for n in (0, 1, 2, 3, 4)]
    assert -1 not in choice
    assert "0" not in choice


def test_the_full_choice_holds_every_option() -> None:
    """Full of four is 0 to 3, in the order of preference; full of none is empty."""
    assert (0, 1, 2, 3) == Choice.full(4).options()
    assert Choice.full(0).is_empty


def test_an_option_named_twice_counts_once() -> None:
    """A set has no doubles."""
    assert Choice.one_of(2) == Choice.one_of(2, 2)


def test_fewer_options_are_inside_more() -> None:
    """Each option of the one has to be in the other."""
    assert Choice.one_of(1) <= Choice.one_of(0, 1)
    assert not Choice.one_of(0, 2) <= Choice.one_of(0, 1)
    assert Choice(0) <= Choice.one_of(0)

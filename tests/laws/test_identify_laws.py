"""The laws of elimination: one observation more never adds a fibre, and order never matters."""

from __future__ import annotations

from hypothesis import given, settings
from hypothesis import strategies as st

from advisor.identify.eliminate import Seen, identify, proposals
from tests.typed import shipped as knowledge


def every_answer() -> list[Seen]:
    answers = [
        Seen(observation.id, word)
        for observation in knowledge().observations.values()
        for word in observation.answers
    ]
    labels = [Seen("label", f, ((f, None),)) for f in ("silk", "polyester", "acetate")]
    return answers + labels


observed = st.lists(st.sampled_from(every_answer()), max_size=6)


def remain(seen: list[Seen]) -> tuple[str, ...]:
    return identify(seen, list(knowledge().fibres), knowledge().observations).remain


@given(observed, st.sampled_from(every_answer()))
@settings(max_examples=150)
def test_more_never_adds(seen: list[Seen], one: Seen) -> None:
    """One observation more leaves the same fibres or fewer."""
    assert set(remain([*seen, one])) <= set(remain(seen))


@given(observed.flatmap(lambda seen: st.tuples(st.just(seen), st.permutations(seen))))
@settings(max_examples=100)
def test_order_never_matters(pair: tuple[list[Seen], list[Seen]]) -> None:
    """The same observations in another order give the same finding."""
    fibres, observations = list(knowledge().fibres), knowledge().observations
    one, other = pair
    assert identify(one, fibres, observations) == identify(other, fibres, observations)


@given(observed)
@settings(max_examples=100)
def test_twice_is_once(seen: list[Seen]) -> None:
    """The same observation made twice changes nothing."""
    assert remain(seen) == remain([*seen, *seen])


@given(observed)
@settings(max_examples=100)
def test_nothing_left_has_a_reason(seen: list[Seen]) -> None:
    """Where nothing remains, the clash named leaves nothing by itself, and a part of it does."""
    found = identify(seen, list(knowledge().fibres), knowledge().observations)
    if not found.remain and not found.blend:
        assert () == remain(list(found.clash))
        assert all(remain([s for s in found.clash if s != one]) for one in found.clash)
    else:
        assert () == found.clash


@given(observed)
@settings(max_examples=60)
def test_a_proposal_keeps_its_promise(seen: list[Seen]) -> None:
    """After each answer of a proposed test there remains just what was foretold."""
    observations = knowledge().observations
    found = identify(seen, list(knowledge().fibres), observations)
    for proposal in proposals(found, observations):
        for words, kept in proposal.outcomes:
            assert kept == remain([*seen, Seen(proposal.test, words[0])])
            assert len(kept) <= proposal.worst <= len(found.remain)

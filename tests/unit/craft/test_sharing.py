"""The fewest threads that are near enough to every cloth, against trying all sets of them."""

from __future__ import annotations

from itertools import combinations

from hypothesis import given, settings
from hypothesis import strategies as st

from advisor.craft.colour import Lab, difference
from advisor.craft.sharing import EXACT, Thread, fewest

LABS = st.builds(Lab, st.floats(20, 30), st.floats(-4, 4), st.floats(-4, 4))


def smallest(cloths: list[Lab], threads: list[Thread], near: float) -> int | None:
    """How many threads suit all cloths at least, by trying every set."""
    for size in range(len(cloths) + 1):
        for some in combinations(threads, size):
            if all(any(difference(c, t.lab) <= near for t in some) for c in cloths):
                return size
    return None


@settings(max_examples=60)
@given(
    st.lists(LABS, min_size=1, max_size=5),
    st.lists(LABS, max_size=4),
    st.floats(0, 6),
)
def test_no_set_of_threads_is_smaller(cloths: list[Lab], rack: list[Lab], near: float) -> None:
    """As few threads as the best of all sets, and each no further away than she lets it be."""
    threads = [Thread(f"cloth {i}", lab, bought=True) for i, lab in enumerate(cloths)]
    threads += [Thread(f"reel {i}", lab) for i, lab in enumerate(rack)]
    named = {f"c{i}": lab for i, lab in enumerate(cloths)}
    found = fewest(named, threads, near)
    assert set(named) == set(found)
    assert smallest(cloths, threads, near) == len({t.name for t in found.values()})
    assert all(difference(named[c], t.lab) <= near for c, t in found.items())


@settings(max_examples=50)
@given(st.lists(LABS, min_size=2, max_size=5), st.floats(0, 3), st.floats(0, 3))
def test_nearer_never_needs_fewer(cloths: list[Lab], near: float, more: float) -> None:
    """Whoever lets threads be further away threads no more of them."""
    threads = [Thread(f"cloth {i}", lab, bought=True) for i, lab in enumerate(cloths)]
    named = {f"c{i}": lab for i, lab in enumerate(cloths)}
    close, far = (
        len({t.name for t in fewest(named, threads, d).values()}) for d in (near, near + more)
    )
    assert far <= close


def test_a_reel_at_hand_goes_before_one_to_buy() -> None:
    """Of two threads that suit both cloths the one on the rack is taken; the darker before it."""
    cloths = {"skirt": Lab(50, 0, 0), "top": Lab(50.4, 0, 0)}
    bought = [Thread("skirt", cloths["skirt"], bought=True)]
    hers = [Thread("lighter", Lab(51, 0, 0)), Thread("darker", Lab(49.6, 0, 0))]
    assert {"skirt": "skirt", "top": "skirt"} == {
        name: one.name for name, one in fewest(cloths, bought, 2).items()
    }
    found = fewest(cloths, [*bought, *hers], 2)
    assert {"darker"} == {one.name for one in found.values()}


def test_what_does_not_suit_is_not_shared() -> None:
    """A reel that is barred from a cloth leaves it with its own."""
    cloths = {"skirt": Lab(50, 0, 0), "top": Lab(50, 0, 0)}
    threads = [Thread("own", Lab(50, 0, 0), bought=True), Thread("reel", Lab(50, 0, 0))]
    found = fewest(cloths, threads, 1, frozenset({("top", "reel")}))
    assert "own" == found["top"].name


def test_a_cloth_that_nothing_suits_is_left_out() -> None:
    """Where no thread is near, none is named; the others are found all the same."""
    cloths = {"far": Lab(90, 0, 0), "near": Lab(50, 0, 0)}
    assert ["near"] == list(fewest(cloths, [Thread("reel", Lab(50, 0, 0))], 1))


def test_many_cloths_are_all_sewn() -> None:
    """Beyond what is searched exactly every cloth still has a thread near enough."""
    cloths = {f"c{i}": Lab(20 + 2 * i, 0, 0) for i in range(EXACT + 8)}
    threads = [Thread(name, lab, bought=True) for name, lab in cloths.items()]
    found = fewest(cloths, threads, 3.0)
    assert set(cloths) == set(found)
    assert len({t.name for t in found.values()}) < len(cloths)
    assert all(difference(cloths[c], t.lab) <= 3.0 for c, t in found.items())

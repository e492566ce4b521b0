"""Remedies taken together, and the cheapest set of them that cures everything."""

from __future__ import annotations

from itertools import product

import pytest

from advisor.claims.judgement import Advice
from advisor.decide.advise import advise
from advisor.decide.taking import chosen
from advisor.decide.together import cure_all, taken_together
from advisor.errors import InputError
from advisor.project.garment import Garment
from tests.unit.decide.engine_cases import KNOWN, cloth, garment, seam

LINEN = cloth("suiting", "linen")
COTTON = cloth("suiting", "cotton", name="canvas")
ORGANZA = cloth("organza", "nylon")
GLUE = cloth("iron-on")


def two_clashes() -> Advice:
    """Linen against nylon in one seam, glue against nylon in another."""
    about: Garment = garment(
        [LINEN, COTTON, ORGANZA, GLUE],
        seam("hem", "suiting", "organza"),
        seam("facing", "canvas", "iron-on", "organza"),
    )
    advice = advise(about, KNOWN)
    assert 2 == len(advice.judgement.conflicts)
    return advice


def test_the_cheapest_set_is_found_and_leaves_nothing() -> None:
    """No other choice of one remedy for each conflict that cures all costs less."""
    advice = two_clashes()
    found = cure_all(advice, KNOWN)
    assert found is not None
    assert () == found.after.conflicts
    many = [range(1, len(advice.cures[c.key]) + 1) for c in advice.judgement.conflicts]
    for which in product(*many):
        picks = list(enumerate(which, 1))
        other = taken_together(advice, picks, KNOWN)
        if other is not None and not other.after.conflicts:
            assert found.cost <= other.cost


def test_together_each_remedy_is_in_the_lines() -> None:
    """What is written names both seams."""
    found = cure_all(two_clashes(), KNOWN)
    assert found is not None
    assert {"hem", "facing"} == {line.path[1] for line in found.lines if line.path[0] == "seams"}


def test_a_garment_without_a_conflict_has_no_set() -> None:
    """Nothing to cure, nothing offered."""
    assert cure_all(advise(garment([COTTON]), KNOWN), KNOWN) is None


def test_numbers_name_conflicts_and_remedies() -> None:
    """`1` is the first remedy of the first conflict, `2.2` the second of the second."""
    advice = two_clashes()
    assert ((1, 1),) == chosen(advice, "1", KNOWN).picks
    assert ((1, 1), (2, 1)) == chosen(advice, " 2, 1.1 ", KNOWN).picks


@pytest.mark.parametrize("words", ["0", "3", "1.9", "one", "1,1", "1;2", ""])
def test_a_number_that_is_not_there_is_refused(words: str) -> None:
    """What nothing is called by is no remedy."""
    with pytest.raises(InputError):
        chosen(two_clashes(), words, KNOWN)

"""The cheapest test that frees the most: judged by the iron that each answer would allow."""

from __future__ import annotations

from advisor.decide.unknowns import Unknown
from advisor.identify.cheapest import cheapest_test
from advisor.knowledge.model import Mix
from advisor.knowledge.observations import Observation, PossibleAnswer


def mix(fibre: str) -> Mix:
    return ((fibre, 100.0),)


def observation(id_: str, cost: int, **answers: tuple[str, ...]) -> Observation:
    made = {
        word: PossibleAnswer(word, (), frozenset(fibres), ("page",), True, "")
        for word, fibres in answers.items()
    }
    named = frozenset(f for answer in made.values() for f in answer.fibres)
    return Observation(id_, id_, "", "", "look", cost, "", made, named)


CLOTH = Unknown(
    "gift", 110.0, ((mix("silk"), 150.0), (mix("acetate"), 110.0), (mix("linen"), 200.0))
)


def test_the_test_that_frees_most_wins() -> None:
    """A dear test that frees two candidates comes before a cheap one that frees one."""
    tests = {
        "glance": observation("glance", 1, shiny=("silk",), dull=("acetate", "linen")),
        "burn": observation("burn", 4, hair=("silk",), paper=("linen",), bead=("acetate",)),
    }
    found = cheapest_test(CLOTH, tests)
    assert found is not None
    assert "burn" == found.test
    assert [200.0, 150.0] == [freed.limit for freed in found.freed]


def test_of_equal_tests_the_cheapest() -> None:
    """Two tests free the same; the cheaper is told."""
    answers = {"dissolves": ("acetate",), "stays": ("silk", "linen")}
    tests = {
        "dear": observation("dear", 5, **answers),
        "cheap": observation("cheap", 2, **answers),
    }
    found = cheapest_test(CLOTH, tests)
    assert found is not None
    assert "cheap" == found.test
    assert [150.0] == [freed.limit for freed in found.freed]


def test_a_test_that_frees_nothing_is_not_told() -> None:
    """Where the tenderest remains after every answer, there is no test to tell."""
    tests = {"glance": observation("glance", 1, a=("silk", "acetate"), b=("linen", "acetate"))}
    assert cheapest_test(CLOTH, tests) is None


def test_a_blend_remains_while_one_of_its_fibres_does() -> None:
    """A blend with the tender fibre is not freed by an answer that its other fibre gives."""
    blend: Mix = (("silk", 60.0), ("acetate", 40.0))
    cloth = Unknown("gift", 110.0, ((blend, 110.0), (mix("linen"), 200.0)))
    tests = {"burn": observation("burn", 4, hair=("silk",), paper=("linen",), bead=("acetate",))}
    found = cheapest_test(cloth, tests)
    assert found is not None
    assert [((mix("linen"),), 200.0)] == [(freed.mixes, freed.limit) for freed in found.freed]

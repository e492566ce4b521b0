from __future__ import annotations

import pickle

import pytest

from advisor.errors import AdvisorError, Exit, InputError, Problem, Where, nearest


def test_a_problem_reads_as_place_fault_expectation_and_guess() -> None:
    """A problem is one line: where, what, what was expected, what was probably meant."""
    problem = Problem(
        "unknown fabric 'organzza'",
        Where("project.yaml", 12, 5),
        "a fabric of the knowledge base",
        ("organza",),
    )
    assert str(problem) == (
        "project.yaml:12:5: unknown fabric 'organzza'. "
        "Expected a fabric of the knowledge base. Did you mean 'organza'?"
    )


@pytest.mark.parametrize(
    ("expected", "where"),
    [
        ("p.yaml", Where("p.yaml")),
        ("p.yaml:3", Where("p.yaml", 3)),
        ("p.yaml:3:7", Where("p.yaml", 3, 7)),
        ("p.yaml", Where("p.yaml", None, 7)),
    ],
)
def test_a_place_leaves_out_what_is_not_known(expected: str, where: Where) -> None:
    """A place shows file, line and column as far as they are known."""
    assert expected == str(where)


def test_several_guesses_are_offered_as_alternatives() -> None:
    """Three guesses are joined with commas and a last 'or'."""
    text = str(Problem("unknown word 'x'", nearest=("a", "b", "c")))
    assert text == "unknown word 'x'. Did you mean 'a', 'b' or 'c'?"


def test_quoted_input_cannot_break_the_line_or_steer_the_terminal() -> None:
    """Line breaks and control codes from the input are shown as text."""
    text = str(Problem("unknown key 'a\nb\x1b[31m\u202e'"))
    assert text == "unknown key 'a\\nb\\x1b[31m\\u202e'"


def test_twenty_problems_are_shown_and_the_rest_counted() -> None:
    """An error of 23 problems prints 20 lines and 'and 3 more', but carries all."""
    error = InputError(Problem(f"fault {n}") for n in range(23))
    lines = str(error).split("\n")
    assert (21, "fault 19", "and 3 more") == (len(lines), lines[19], lines[20])
    assert len(error.problems) == 23


def test_exactly_twenty_problems_need_no_count() -> None:
    """Nothing is counted when everything is shown."""
    assert "more" not in str(InputError([Problem("fault")] * 20))


@pytest.mark.parametrize("given", ["too large", Problem("too large"), [Problem("too large")]])
def test_an_input_error_takes_a_sentence_a_problem_or_several(given: object) -> None:
    """All three ways to make an error carry the same tuple."""
    assert InputError(given).problems == (Problem("too large"),)  # type: ignore[arg-type]


def test_an_input_error_without_problems_is_a_mistake_of_ours() -> None:
    """An error that says nothing cannot be made."""
    with pytest.raises(ValueError, match="at least one problem"):
        InputError([])


def test_errors_survive_being_sent_to_another_process() -> None:
    """An error that is pickled and read back is worded the same."""
    error = InputError(Problem("no such file", Where("p.yaml")))
    assert str(error) == str(pickle.loads(pickle.dumps(error)))  # noqa: S301 - our own bytes


def test_each_error_knows_its_exit_code() -> None:
    """Bad input ends with 2, a fault of ours with 3, and the codes are the promised ones."""
    assert (Exit.USAGE, Exit.FAULT) == (InputError.exit, AdvisorError.exit)
    assert [0, 1, 2, 3, 130] == [int(code) for code in Exit]
    assert issubclass(InputError, AdvisorError)


@pytest.mark.parametrize(
    ("expected", "word"),
    [(("organza",), "organzza"), (("organza",), "ORGANZA"), ((), "zzzzz"), ((), " "), ((), "")],
)
def test_the_nearest_name_is_found_whatever_the_capitals(
    expected: tuple[str, ...], word: str
) -> None:
    """A slip of the finger finds its name; nonsense finds none."""
    assert expected == nearest(word, ["organza", "velvet", "Denim"])


def test_the_beginning_of_a_word_is_a_nearest_name() -> None:
    """Half of it, where it is that: "hem" of "hemmed"."""
    assert ("hem",) == nearest("hemmed", ["open", "hem", "folded"])


def test_half_a_word_is_no_nearest_name() -> None:
    """Nobody who types 'iron' means 'on'."""
    assert nearest("iron", ["on", "edge"]) == ()
    assert nearest("irn", ["iron"]) == ("iron",)


def test_the_nearest_names_keep_their_own_spelling_and_number() -> None:
    """Names come back as they are spelt, at most n of them, whatever the order given."""
    assert nearest("denin", {"Denim"}) == ("Denim",)
    names = ["satin", "sateen", "satins"]
    assert nearest("satin", names, 2) == nearest("satin", reversed(names), 2)
    assert len(nearest("satin", names, 2)) == 2


def test_a_name_of_absurd_length_is_compared_in_no_time() -> None:
    """A megabyte of a word is cut before it is compared."""
    assert nearest("x" * 1_000_000, ["organza"] * 3) == ()

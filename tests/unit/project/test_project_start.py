"""The questions of a new project: understood at once, asked again, and written so as to load."""

from __future__ import annotations

import re
from collections.abc import Callable

import pytest
from hypothesis import given
from hypothesis import strategies as st

from advisor.errors import InputError
from advisor.knowledge.factwords import CLOTH_WORDS
from advisor.project.facts import SEAM_KEYS
from advisor.project.garment import Use
from advisor.project.phrase import read_phrase
from advisor.project.schema import ClothForm, MakerForm, SeamForm
from advisor.project.start import Answers, ClothAnswer, SeamAnswer, interview
from advisor.project.template import CLOTH, MAKER, SEAM, project_text
from advisor.textio.flow import quoted
from advisor.textio.yamlfile import parse_yaml
from tests.unit.project import project_cases as cases

GROUPS = {"gathers", "pleats", "crosses"}
"""Keys of a seam that need another seam or layer, which the file only tells of in words."""
BOLERO = [
    "black bolero",
    "us",
    "",
    "4-thread",
    "standard, walking",
    "cotton velveteen",
    "",
    "acetate satin",
    "lining",
    "",
    "front edge",
    "shell, lining, woven fusible interfacing",
    "24 1/2 in",
    "curved",
    "low",
    "",
]


def asker(lines: list[str], asked: list[str] | None = None) -> Callable[[str], str | None]:
    """Somebody who gives these answers one after the other, and then no more."""
    left = iter(lines)

    def ask(question: str) -> str | None:
        if asked is not None:
            asked.append(question)
        return next(left, None)

    return ask


def talk(lines: list[str]) -> tuple[Answers, list[str]]:
    """The answers, and everything that was told."""
    told: list[str] = []
    return interview(asker(lines), told.append, cases.knowledge()), told


def test_the_answers_become_a_project_that_loads() -> None:
    """What was answered stands in the file and in the garment that is read from it."""
    answers, told = talk(BOLERO)
    garment = cases.garment(project_text(answers, cases.knowledge()))
    assert ("black bolero", "us") == (garment.name, garment.units)
    assert ("4-thread", ("standard", "walking")) == (garment.maker.overlocker, garment.maker.feet)
    assert "machine" in garment.maker.assumed
    assert (Use("shell"), Use("lining"), Use("woven fusible interfacing")) == garment.seams[0].uses
    said = {"length": 24.5 * 25.4, "shape": "curved", "stress": "low"}
    assert said | {"edge": "turned"} == garment.seams[0].facts  # its lining can only face it
    assert "edge" in garment.seams[0].assumed
    assert [
        (
            "Understood: velveteen, fibre unknown, perhaps cotton or "
            "cotton 97 % with elastane 3 %, weight not said."
        ),
        "Understood: satin, acetate, weight not said.",
    ] == told


@pytest.mark.parametrize(
    ("at", "wrong", "told"),
    [
        (1, "imperial", "unknown word 'imperial'"),
        (2, "loom", "unknown word 'loom'"),
        (4, "standard, wlking", "'walking'"),
        (5, "cotton velvateen", "'velveteen'"),
        (5, "", "at least one cloth"),
        (8, "Shell", "'Shell' is there already"),
        (8, "a, b", "a comma"),
        (10, "", "at least one seam"),
        (11, "shell, linnig", "'lining'"),
        (11, "coil zip", "no cloth of this garment"),
        (11, "", "cannot be left out"),
        (12, "62", "no unit"),
        (12, "51 m", "50 m"),
        (13, "curvy", "'curved'"),
        (14, "much", "low, medium, high"),
    ],
)
def test_an_answer_not_understood_is_asked_again(at: int, wrong: str, told: str) -> None:
    """Whoever slips is told why, and the same question comes again."""
    answers, said = talk([*BOLERO[:at], wrong, *BOLERO[at:]])
    right, _ = talk(BOLERO)
    assert right == answers
    assert any(told in line for line in said), said


@pytest.mark.parametrize("count", range(len(BOLERO)))
def test_the_answers_may_end_anywhere(count: int) -> None:
    """Where the answers end, what was given is enough for a project, or it is said what is not."""
    if count < 12:  # not yet the layers of a seam
        with pytest.raises(InputError, match="still needed"):
            talk(BOLERO[:count])
    else:
        text = project_text(talk(BOLERO[:count])[0], cases.knowledge())
        assert ["front edge"] == [seam.name for seam in cases.garment(text).seams]


@pytest.mark.parametrize("answer", ["", "-,-", "x" * 300])
def test_nobody_is_asked_for_ever(answer: str) -> None:
    """Where the same useless answer comes without end, the questions do end."""
    with pytest.raises(InputError, match="20 answers were"):
        interview(lambda _: answer, lambda _: None, cases.knowledge())


@given(st.lists(st.sampled_from([*BOLERO, "62", "hem", "-", "\ud800", "é"]) | st.text(max_size=8)))
def test_no_answers_are_a_surprise(lines: list[str]) -> None:
    """Whatever is answered, a project that loads comes of it or an input error."""
    try:
        answers, _ = talk(lines)
    except InputError:
        return
    assert answers.garment == cases.garment(project_text(answers, cases.knowledge())).name


def test_every_question_is_asked() -> None:
    """Each question of the table is put to whoever answers them all."""
    asked: list[str] = []
    interview(asker(BOLERO, asked), lambda _: None, cases.knowledge())
    assert 16 == len(asked)
    assert not any("{" in question for question in asked)


def keys(form: type) -> set[str]:
    """The keys of a form."""
    return {field.alias or name for name, field in form.model_fields.items()}  # type: ignore[attr-defined]


ELSEWHERE = {"on", "fastening", "number", "sinks", "part"}
"""Told in the words beside `layers`, `overhang` and `parts`, without which they say nothing."""


def test_the_file_shows_every_optional_key() -> None:
    """All keys of the form stand in the file, awake or asleep, and no others."""
    optional = (keys(MakerForm) | keys(ClothForm) | keys(SeamForm)) - {
        "fabric",
        "notion",
        "name",
        "layers",
        *GROUPS,
        *ELSEWHERE,
    }
    assert optional == {*MAKER, *CLOTH, *SEAM}
    others = {"name", "layers", "times", "moves", "kind", "joins", *GROUPS}
    others |= {
        "method",
        "fitting",
        "topstitch",
        "left open",
        "pressed first",
        "fused first",
        "lessen bulk",
    }
    others |= ELSEWHERE
    assert keys(SeamForm) - others == set(SEAM_KEYS)
    assert set(CLOTH_WORDS) <= keys(ClothForm)
    text = project_text(talk(BOLERO)[0], cases.knowledge())
    for key in optional:
        assert re.search(rf"^ +(# )?{re.escape(key)}: ", text, re.MULTILINE), key


def test_every_sleeping_line_may_be_woken() -> None:
    """Each key that sleeps, and all of them together, make a project that loads."""
    lines = project_text(talk(BOLERO)[0], cases.knowledge()).splitlines()
    asleep = [i for i, line in enumerate(lines) if re.match(r" *# ", line)]
    assert len(asleep) > 20
    for wake in [*([i] for i in asleep), asleep]:
        woken = [
            re.sub(r"^( *)# ", r"\1", line) if i in wake else line for i, line in enumerate(lines)
        ]
        assert [] == [str(problem) for problem in cases.problems("\n".join(woken))]


@given(st.text(st.characters(exclude_categories=["Cs", "Cc"]), min_size=1, max_size=20))
def test_quoted_text_is_read_back(text: str) -> None:
    """Text written into the file is the text that is read from it."""
    tidy = " ".join(text.split())
    if tidy and tidy.isprintable():
        assert {"key": tidy} == parse_yaml(f"key: {quoted(tidy)}\n", "p.yaml").data


def test_a_cloth_with_shares_sleeps_with_its_own_fibres() -> None:
    """The sleeping line of fibres never contradicts the words for the fabric."""
    for phrase in (
        "cotton 97 elastane 3 denim 340 g/m2",
        "brocade, fibre unknown",
        "silk metal lamé",
        "linen suiting",
    ):
        cloth = ClothAnswer("shell", phrase, read_phrase(phrase, cases.knowledge()))
        answers = Answers("g", cloths=[cloth], seams=[SeamAnswer("s", (("shell", False),))])
        text = project_text(answers, cases.knowledge())
        woken = re.sub(r"^( *)# (fibres|weight):", r"\1\2:", text, flags=re.MULTILINE)
        assert text != woken
        assert [] == [str(problem) for problem in cases.problems(woken)]

"""A talk can go back, explain itself, be broken off and taken up again, and loses no answer."""

from __future__ import annotations

import os
from collections.abc import Callable
from functools import cache
from pathlib import Path

import pytest

from advisor.cli.conversation import Conversation, explained
from advisor.cli.identify_talk import help_for as help_for_test
from advisor.cli.identify_talk import talk
from advisor.project import begun
from advisor.project.start import HELP, QUESTIONS, Answers, help_for, interview
from tests.typed import shipped as knowledge
from tests.typed import typed

BOLERO = [
    "bolero", "us", "hand", "no", "", "silk organza", "frill", "linen suiting", "", "",
    "side", "frill, linen suiting", "40 cm", "curved", "low", "",
]  # fmt: skip
CUT_OFF = object()


def scripted(lines: list[object], asked: list[str]) -> Callable[[str], str | None]:
    """Answers one after the other; CUT_OFF is Ctrl-C, and behind the last nobody is there."""
    left = iter(lines)

    def ask(question: str) -> str | None:
        asked.append(question)
        line = next(left, None)
        if line is CUT_OFF:
            raise KeyboardInterrupt
        return None if line is None else f"{line}\n"

    return ask


def started(
    lines: list[object], draft: Path | None = None
) -> tuple[Answers | None, list[str], list[str]]:
    """What comes of answering, what was asked and what was told; None where it was cut off."""
    asked: list[str] = []
    told: list[str] = []
    conversation = Conversation(
        explained(knowledge(), help_for), draft, scripted(lines, asked), told.append
    )
    try:
        found = conversation.held(lambda ask, tell: interview(ask, tell, knowledge()))
    except KeyboardInterrupt:
        return None, asked, told
    return found, asked, told


@cache
def whole() -> Answers:
    """What comes of the answers without a step back."""
    found, _, _ = started([*BOLERO])
    assert found is not None
    return found


@pytest.mark.parametrize("at", range(1, len(BOLERO)))
def test_going_back_asks_the_question_before_again(at: int) -> None:
    """Wherever she goes back, the same answers lead to the same project."""
    found, asked, told = started([*BOLERO[:at], "back", BOLERO[at - 1], *BOLERO[at:]])
    assert whole() == found
    assert asked[at - 1] == asked[at + 1]
    assert any(line.startswith("Back; you had") for line in told)


def test_going_back_may_go_on_to_the_first_and_change_it() -> None:
    """Every answer behind it is asked for anew; there is nothing before the first."""
    found, _, told = started(["cape", "us", "<", "back", "back", *BOLERO])
    assert whole() == found
    assert "This is the first question." in told


def test_a_wrong_answer_is_not_gone_back_to() -> None:
    """What was not understood is no answer: back goes to the question before it."""
    found, asked, _ = started(["bolero", "imperial", "back", *BOLERO])
    assert whole() == found
    assert asked[3] == asked[0]


@pytest.mark.parametrize("at", [1, 4, 6, 9, 11, 13])
def test_what_is_cut_off_is_taken_up_again(at: int, tmp_path: Path) -> None:
    """Ctrl-C keeps the answers; the same questions are not put twice, and no draft is left."""
    draft = tmp_path / "bolero.yaml.draft"
    found, first, _ = started([*BOLERO[:at], CUT_OFF], draft)
    assert found is None
    assert draft.is_file()
    again, second, told = started(["yes", *BOLERO[at:]], draft)
    assert whole() == again
    assert f"A draft of {at} answer" in told[0]
    assert first[-1] == second[1]


def test_a_draft_may_be_left_aside_and_a_strange_file_is_none(tmp_path: Path) -> None:
    """'no' begins anew; a file that is not ours is never taken for answers."""
    draft = tmp_path / "bolero.yaml.draft"
    started(["cape", CUT_OFF], draft)
    found, _, _ = started(["no", *BOLERO], draft)
    assert whole() == found
    draft.write_bytes(b"\xff\xfe\x00 nothing of ours")
    found, asked, _ = started([*BOLERO], draft)
    assert whole() == found
    assert "Go on" not in asked[0]


def test_a_draft_is_kept_where_it_is_not_clear_whether_she_goes_on_with_it(tmp_path: Path) -> None:
    """After five answers that say neither the talk begins anew, and writes nothing over it."""
    draft = tmp_path / "draft"
    started([*BOLERO[:5], CUT_OFF], draft)
    kept = draft.read_text("utf-8")
    unclear: list[object] = ["perhaps"] * 5
    started([*unclear, "another", "metric", CUT_OFF], draft)
    assert kept == draft.read_text("utf-8")


STRANGE = "# Draft of a letter\n"


def _a_file(draft: Path) -> Path:
    draft.write_text(STRANGE, "utf-8")
    return draft


def _a_link(draft: Path) -> Path:
    letter = _a_file(draft.with_name("letter"))
    draft.symlink_to(letter)
    return letter


def _a_link_to_answers(draft: Path) -> Path:
    started([*BOLERO[:3], CUT_OFF], draft.with_name("other.draft"))
    draft.symlink_to(draft.with_name("other.draft"))
    return draft.with_name("other.draft")


def _a_link_to_nothing(draft: Path) -> Path:
    draft.symlink_to(draft.with_name("nowhere"))
    return draft.with_name("nowhere")


@pytest.mark.parametrize("there", [_a_file, _a_link, _a_link_to_answers, _a_link_to_nothing])
def test_what_is_no_draft_of_ours_is_left_alone(
    there: Callable[[Path], Path], tmp_path: Path
) -> None:
    """Neither a file of hers nor what a link points at is written, read as answers, or dropped."""
    draft = tmp_path / "bolero.yaml.draft"
    other = there(draft)
    before = other.read_text("utf-8") if other.exists() else None
    _, _, told = started([*BOLERO[:5], CUT_OFF], draft)
    assert f"{draft} is no draft of the advisor's, and is left alone" in told[0]
    done = typed("start", "bolero.yaml", text="\n".join(["yes", *BOLERO[5:]]), folder=tmp_path)
    assert done.returncode == 0, done.err
    assert "silk organza" in (tmp_path / "bolero.yaml").read_text("utf-8")
    assert before == (other.read_text("utf-8") if other.exists() else None)
    assert os.path.lexists(draft)
    assert not (tmp_path / "bolero.yaml.draft2").exists()


def test_a_file_that_takes_the_place_of_a_draft_meanwhile_is_left_alone(tmp_path: Path) -> None:
    """Each time before it is written the draft is looked at anew."""
    draft = tmp_path / "bolero.yaml.draft"
    asked: list[str] = []
    lines = scripted([*BOLERO], asked)

    def ask(question: str) -> str | None:
        if len(asked) == 4:
            draft.write_text(STRANGE, "utf-8")
        return lines(question)

    conversation = Conversation(explained(knowledge(), help_for), draft, ask, lambda _: None)
    conversation.held(lambda ask, tell: interview(ask, tell, knowledge()))
    conversation.over()
    assert STRANGE == draft.read_text("utf-8")


def test_going_back_loses_no_answer_until_another_is_given(tmp_path: Path) -> None:
    """Ctrl-C right after 'back' keeps what was gone back from."""
    draft = tmp_path / "bolero.yaml.draft"
    started(["bolero", "back", CUT_OFF], draft)
    again, _, told = started(["yes", *BOLERO[1:]], draft)
    assert "A draft of 1 answer" in told[0]
    assert whole() == again


def test_answers_that_end_too_soon_are_said_to_be_kept(tmp_path: Path) -> None:
    """Ctrl-D, or the end of a pipe, loses no more than Ctrl-C, and says so."""
    done = typed("start", "bolero.yaml", text="bolero\nus\n", folder=tmp_path)
    assert done.returncode == 2
    assert "your answers are kept; advisor start bolero.yaml goes on with them" in done.err
    nothing = typed("start", "cape.yaml", folder=tmp_path)
    assert "kept;" not in nothing.err


def test_a_link_to_nothing_is_refused_before_anything_is_asked(tmp_path: Path) -> None:
    """A name that cannot be written is told first, not after a dozen answers."""
    (tmp_path / "bolero.yaml").symlink_to("nowhere.yaml")
    done = typed("start", "bolero.yaml", text="\n".join(BOLERO), folder=tmp_path)
    assert done.returncode == 2
    assert "What do you call" not in done.err
    assert "--replace" in done.err


def test_each_question_is_explained() -> None:
    """By its own words, not those of its neighbour; and a word by the knowledge."""
    assert HELP.keys() == QUESTIONS.keys()
    for key, question in QUESTIONS.items():
        words = {"n": 2, "name": "shell", "cloths": "shell", "feet": "zip"}
        assert HELP[key] == help_for(question.format(**words))
    _, _, told = started(["?", "? overlocker", "? organzza", *BOLERO])
    assert HELP["garment"] in told
    assert any("trims and wraps an edge" in line for line in told)
    assert any("'organza'" in line for line in told)


def test_each_question_about_a_usual_garment_is_explained() -> None:
    """By a sentence of its own; a word of the question that is no trade word by its question."""
    assert set(begun.ASKED) == set(begun.HELP)
    for key, question in begun.ASKED.items():
        asked = question.format(now="to the body", name="shell", places="hem, zip")
        assert begun.HELP[key] == begun.help_for(asked)
    tell = explained(knowledge(), begun.help_for)
    fitting = begun.ASKED["fitting"].format(now="loosely")
    assert begun.HELP["fitting"] == tell(fitting, "loosely")
    cloth = begun.ASKED["cloth"].format(name="shell", now="wool crepe")
    assert "The outer cloth of a garment" in tell(cloth, "shell")
    assert "'organza'" in tell(cloth, "organzza")


def test_identify_goes_back_explains_and_tries_what_is_harmless_first() -> None:
    """No flame is offered while a look or a touch still parts the fibres."""
    asked: list[str] = []
    told: list[str] = []
    lines = ["yes", "unknown", "?", "1", "back", "1", "2", "2"]
    conversation = Conversation(
        explained(knowledge(), lambda q: help_for_test(q, knowledge())),
        None,
        scripted([*lines, *["" for _ in range(40)]], asked),
        told.append,
    )
    findings = conversation.held(lambda ask, tell: talk(ask, tell, knowledge(), ()))
    assert any("speaks for" in line for line in told)
    assert len(knowledge().fibres) > len(findings[""].remain) > 1
    kinds = [
        next((o.kind for o in knowledge().observations.values() if q.startswith(o.ask)), "consent")
        for q in asked
    ]
    consent = [i for i, q in enumerate(asked) if q.startswith("Will you burn")]
    harmless = [i for i, kind in enumerate(kinds) if kind in ("look", "feel", "water")]
    assert consent
    assert max(harmless) < consent[0]

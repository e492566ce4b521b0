"""`advisor learn` as it is typed: what she writes down is used, and what is wrong is refused."""

from __future__ import annotations

import json
from pathlib import Path

import pytest

from tests.typed import Done, typed
from tests.unit.knowledge.small_book import write_book


def run(own: Path, *words: str, shipped: Path | None = None) -> Done:
    named = {"ADVISOR_KNOWLEDGE": str(shipped)} if shipped else {}
    return typed(*words, env={"ADVISOR_OWN": str(own), **named})


def small(folder: Path) -> Path:
    """A small knowledge folder, which is read in no time."""
    return write_book(folder / "shipped")


def test_a_result_with_a_reason_stands_on_every_sheet(tmp_path: Path) -> None:
    """Her velvet takes needle 70; the hotter iron is used for its written reason, which is told."""
    own = tmp_path / "own"
    first = run(
        own,
        "learn",
        "result",
        "green velvet",
        "--like",
        "acetate velvet 280 g/m2",
        "--good",
        "needle.size=70",
        "--good",
        "press.temperature=120",
        "--reason",
        "three scraps under a dry cloth",
        "--on",
        "May",
    )
    assert 0 == first.returncode, first.err
    answer = run(own, "ask", "green velvet")
    assert "needle 70" in " ".join(answer.out.split())
    told = " ".join(answer.out.split())
    assert "You have gone beyond a published limit" in told
    assert "three scraps under a dry cloth" in told
    assert "your own test" in " ".join(run(own, "ask", "green velvet", "--more").out.split())
    project = tmp_path / "coat.yaml"
    seams = "seams:\n  - {name: side, layers: [pile, pile]}\n"
    project.write_text(f"garment: coat\nfabrics: {{pile: green velvet}}\n{seams}", "utf-8")
    assert "three scraps under a dry" in " ".join(run(own, "sheet", str(project)).out.split())


def test_without_a_reason_a_limit_stands(tmp_path: Path) -> None:
    """A hotter iron without a reason is kept and not used, and she is told so at once."""
    done = run(
        tmp_path / "own",
        "learn",
        "result",
        "my lining",
        "--like",
        "nylon lining",
        "--good",
        "press.temperature=180",
        shipped=small(tmp_path),
    )
    assert 0 == done.returncode, done.err
    assert "not used" in done.err
    assert "(at most 110 °C" in done.err


def test_what_spoilt_it_is_written(tmp_path: Path) -> None:
    """Good and bad settings, a date and a note stand in the file as they were told."""
    own, shipped = tmp_path / "own", small(tmp_path)
    words = (
        "learn",
        "result",
        "my lining",
        "--like",
        "nylon lining",
        "--bad",
        "press.temperature=212 °F",
        "--on",
        "May",
        "--note",
        "it drew up",
    )
    assert 0 == run(own, *words, shipped=shipped).returncode
    text = (own / "fabrics" / "my-lining.yaml").read_text("utf-8")
    assert "- {bad: {press.temperature: 100}, on: May, note: it drew up}" in text
    listed = run(own, "learn", "list", shipped=shipped)
    assert "my-lining.yaml" in listed.out


def test_what_is_wrong_is_not_written(tmp_path: Path) -> None:
    """A cloth that is not understood, or a name that is taken, leaves no file behind."""
    own, shipped = tmp_path / "own", small(tmp_path)
    wrong = run(own, "learn", "cloth", "mine", "--like", "silk velvett", shipped=shipped)
    assert 2 == wrong.returncode
    taken = run(own, "learn", "name", "velvet", "lining", shipped=shipped)
    assert 2 == taken.returncode
    assert "nothing was written" in taken.err
    assert not own.exists()


def test_a_fault_in_her_files_never_takes_the_tool_down(tmp_path: Path) -> None:
    """A broken file is named on stderr, warm or cold, and the answer is the shipped one."""
    own = tmp_path / "own"
    (own / "fabrics").mkdir(parents=True)
    (own / "fabrics" / "broken.yaml").write_text("id: [", encoding="utf-8")
    plain = run(tmp_path / "none", "ask", "silk organza")
    for _ in range(2):
        answer = run(own, "ask", "silk organza")
        assert plain.returncode == answer.returncode
        assert plain.out == answer.out
        assert "left out of your own knowledge" in answer.err
        assert "broken.yaml" in answer.err


def test_a_rack_is_kept_reel_by_reel(tmp_path: Path) -> None:
    """A reel is written, said more of, refused where it is wrong, and taken out when used up."""
    own, shipped = tmp_path / "own", small(tmp_path)
    rack = own / "threads.yaml"

    def thread(*words: str) -> Done:
        return run(own, "learn", "thread", *words, shipped=shipped)

    assert 0 == thread("navy", "--colour", "#1b2a4a", "--size", "ticket 120").returncode
    assert 0 == thread("gold", "--colour", "61.3 3.7 -5.4", "--near", "2").returncode
    wrong = thread("navy", "--colour", "blue 12")
    assert 2 == wrong.returncode
    assert "'blue 12' is no colour" in wrong.err
    in_words = thread("navy", "--colour", "blueish")
    assert 2 == in_words.returncode
    assert "'blueish' is no colour that can be measured" in in_words.err
    assert "#1b2a4a" in in_words.err
    assert 0 == thread("Navy", "--size", "tex 27").returncode
    assert 0 == thread("gold", "--away").returncode
    assert 2 == thread("gold", "--away").returncode
    assert (
        'near: 2\nreels:\n  - {name: Navy, colour: "#1b2a4a", size: tex 27}\n'
    ) == rack.read_text("utf-8").partition("change it as you like.\n")[2]


@pytest.mark.parametrize(
    ("name", "like", "why"),
    [
        ("mystery 2", "satin", "a word or a number in it would be read as something else"),
        ("Anna underneath", "satin", "it would be taken for 'Anna'"),
        ("satin over velvet", "satin", "it would be taken for 'satin' and 'velvet'"),
        ("gift", "cotton over satin", "more than one cloth"),
    ],
)
def test_a_name_that_could_not_be_asked_for_is_not_written(
    tmp_path: Path, name: str, like: str, why: str
) -> None:
    """What she is told to call it is understood afterwards, or it is not kept."""
    own = tmp_path / "own"
    done = typed("learn", "cloth", name, "--like", like, env={"ADVISOR_OWN": str(own)})
    assert 2 == done.returncode
    assert why in done.err
    assert not list(own.rglob("*.yaml"))


def test_a_fibre_that_is_not_kept_is_told(tmp_path: Path) -> None:
    """Without its share it fixes nothing, and she hears how to say it."""
    env = {"ADVISOR_OWN": str(tmp_path / "own")}
    done = typed("learn", "cloth", "gift", "--like", "polyester crepe", env=env)
    assert 0 == done.returncode
    assert "polyester is not kept" in done.err
    assert "'polyester 100'" in done.err


def test_a_name_that_is_understood_whole_is_kept_whatever_words_it_has(tmp_path: Path) -> None:
    """A word such as over parts two cloths only where a cloth stands on either side of it."""
    env = {"ADVISOR_OWN": str(tmp_path / "own")}
    done = typed("learn", "cloth", "dream over satin", "--like", "cotton lawn", env=env)
    assert 0 == done.returncode, done.err
    answer = typed("ask", "dream over satin", "--json", env=env)
    assert ["dream-over-satin"] == [layer["fabric"] for layer in json.loads(answer.out)["layers"]]


def test_panne_with_elastane_is_hers_as_the_knit_that_it_is(tmp_path: Path) -> None:
    """A cloth of hers that is like it is like what a question would take it for."""
    env = {"ADVISOR_OWN": str(tmp_path / "own")}
    like = "panne velvet 95 polyester 5 elastane"
    assert 0 == typed("learn", "cloth", "green gift", "--like", like, env=env).returncode
    text = (tmp_path / "own/fabrics/green-gift.yaml").read_text("utf-8")
    assert "like: stretch-panne-velvet" in text

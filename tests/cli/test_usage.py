"""Wrong use of a command gets one line, with what to type instead."""

from __future__ import annotations

import contextlib
import io
from pathlib import Path

import pytest

from advisor.cli.main import ended
from tests.typed import typed

JACKET = "knowledge/examples/bandstand-jacket.yaml"
WRONG = [
    (("ask",), "a cloth or more is missing", '`advisor ask "nylon organza" "linen suiting"`'),
    (("sheet",), "a project file is missing", "`advisor sheet coat.yaml`"),
    (("why", JACKET), "a place of the garment", '`advisor why coat.yaml "hem frill" iron`'),
    (("velvet", "silk satin"), "no command 'velvet'", '`advisor ask velvet "silk satin"`'),
    (("aks", "velvet"), "no command 'aks'", "'ask'"),
    (("sheet", "silk organza", "linen"), "too much", '`advisor ask "silk organza" linen`'),
    (("sheet", "silk organza"), "no such file", '`advisor ask "silk organza"`'),
    (("sheet", JACKET, "--html"), "--html lacks its value", "--html coat.html"),
    (("ask", "velvet", "--mroe"), "no option '--mroe'", "'--more'"),
    (("page", "--port", "x"), "'--port'", "`advisor page`"),
    (("learn", "foo"), "no command 'foo'", "`advisor learn -h`"),
    (("ask", "coat.yaml"), "is a file", "`advisor sheet coat.yaml`"),
    (("ask", "velvet", "photo.jpg"), "is a file", "a fabric in a few words"),
    (("ask", "how do I iron velvet"), "a question in words", "`advisor ask velvet`"),
    (("ask", "what", "needle", "for", "velvet"), "a question in words", "`advisor ask velvet`"),
    (("explain",), "what to explain is missing", "`advisor explain velvet`"),
]


@pytest.mark.parametrize(("words", "wrong", "instead"), WRONG, ids=[" ".join(r[0]) for r in WRONG])
def test_wrong_use_says_what_to_type(words: tuple[str, ...], wrong: str, instead: str) -> None:
    """One line on stderr with both, nothing on stdout, and code 2."""
    done = typed(*words)
    said = done.stderr.decode()
    assert 2 == done.returncode
    assert b"" == done.stdout
    assert 1 == said.count("\n")
    assert wrong in said
    assert instead in said


def test_a_net_that_begins_like_a_question_is_none() -> None:
    """Can-can is a net."""
    assert 0 == typed("ask", "can-can net").returncode


def test_help_is_a_command_too() -> None:
    """`help` and `help ask` tell what `-h` and `ask -h` do."""
    assert typed("-h").stdout == typed("help").stdout
    assert typed("ask", "-h").stdout == typed("help", "ask").stdout


def test_a_file_that_is_missing_is_no_cloth() -> None:
    """Only what reads as cloths is sent to `ask`."""
    said = typed("sheet", "nowhere.yaml").stderr.decode()
    assert "nowhere.yaml: no such file\n" == said


@pytest.mark.parametrize("text", ["a,b\n1,2\n", "hello\n", "- a\n- b\n"])
def test_text_that_is_no_project_is_said_to_be_none(tmp_path: Path, text: str) -> None:
    """A table or a letter is called no project, and what writes one is named."""
    file = tmp_path / "some.txt"
    file.write_text(text, "utf-8")
    said = typed("sheet", str(file)).stderr.decode()
    assert "this is not a project file" in said
    assert "`advisor start FILE`" in said


def test_a_phrase_that_is_an_option_too_is_explained_as_the_cloth_first() -> None:
    """Silk organza is a way to interface, and before that a cloth."""
    said = typed("explain", "silk organza").stdout.decode()
    cloth, rest = said.split("silk organza (interfacing)")
    assert cloth.startswith("organza (")
    assert rest


def test_a_program_may_gather_what_is_printed() -> None:
    """It gives a stream of its own that holds text and no bytes, and gets the same text."""
    gathered = io.StringIO()
    with contextlib.redirect_stdout(gathered):
        code = ended(["explain", "linen"])
    assert (0, typed("explain", "linen").out) == (code, gathered.getvalue())

"""What is said before anything is loaded, and what is said when something goes wrong."""

from __future__ import annotations

import json
import os
import subprocess
import sys
from pathlib import Path

import pytest

from advisor import __version__
from advisor.cli.front import COMMANDS, help_text
from tests.typed import typed

CHECKOUT = Path(__file__).resolve().parents[2]


def test_the_help_lists_every_command_as_it_describes_itself() -> None:
    """The table of the quick help and the commands are the same: names, order, first sentence."""
    from advisor.cli.app import app

    told: dict[str, str] = {}
    for command in app.registered_commands:
        assert command.callback is not None
        doc = (command.callback.__doc__ or "").split("\n\n")[0]
        told[command.name or command.callback.__name__] = " ".join(doc.split())
    for group in app.registered_groups:
        assert group.name is not None
        assert group.typer_instance is not None
        told[group.name] = str(group.typer_instance.info.help)
    assert told == dict(COMMANDS)
    assert list(told) == list(COMMANDS)


def test_help_and_version_need_no_library() -> None:
    """They are told without the option parser and without the knowledge."""
    script = (
        "import sys; from advisor.cli.main import ended; code = ended(sys.argv[1:]);"
        "heavy = {'typer', 'rich', 'pydantic', 'yaml', 'numpy', 'json'} & set(sys.modules);"
        "print(sorted(heavy), file=sys.stderr); sys.exit(code)"
    )
    for words, said in (
        (["--version"], f"advisor {__version__}\n"),
        (["--help"], help_text()),
        (["-h"], help_text()),
    ):
        done = subprocess.run(
            [sys.executable, "-c", script, *words],
            cwd=CHECKOUT,
            text=True,
            capture_output=True,
            check=False,
        )
        assert (0, said, "[]\n") == (done.returncode, done.stdout, done.stderr)


def test_each_command_takes_both_words_for_help() -> None:
    """`-h` and `--help` say the same behind a command."""
    assert typed("sheet", "-h").out == typed("sheet", "--help").out != ""
    assert typed("learn", "cloth", "-h").out == typed("learn", "cloth", "--help").out != ""


@pytest.mark.parametrize(
    "words",
    [
        ["sheet", "\x1b[31mred\u202e.yaml"],
        ["ask", "\x1b]qqxx;title\x07\u200bqqzz"],
        ["\x1b[2Jfoo"],
        ["explain", "\x9b31m\ufeffvelvet"],
        ["order", "a\nb\u2028.yaml", "--tick", "\x1b[1m"],
    ],
)
def test_nothing_that_a_terminal_obeys_is_passed_on(words: list[str]) -> None:
    """Escapes, invisible marks and marks that turn the direction are spelled out."""
    done = typed(*words)
    assert 2 == done.returncode
    assert done.out == ""
    bad = "\x1b\x07\x9b\u202e\u2066\u200b\ufeff\u2028"
    assert not [c for c in done.err if c in bad]
    assert "\\x1b" in done.err or "\\u" in done.err or "\\x9b" in done.err


def test_json_spells_such_marks_so_that_they_stay_what_they_are() -> None:
    """The data are the same, and nothing in them reaches the terminal as it is."""
    odd = {"a": "\x9b\u202e\U000e0041\x7f é \\x41 \u200b"}
    script = f"from advisor.cli.output import print_json; print_json({odd!r})"
    done = subprocess.run(
        [sys.executable, "-c", script], cwd=CHECKOUT, capture_output=True, check=False
    )
    text = done.stdout.decode()
    assert odd == json.loads(text)
    assert not set(text) & set("\x9b\u202e\U000e0041\x7f\u200b")


def test_a_fault_of_ours_is_written_down_and_named(tmp_path: Path) -> None:
    """A report with what was typed and where it happened; the message says where it lies."""
    script = (
        "import sys; import advisor.cli.main as m\n"
        "def fails(words): raise KeyError('inside')\n"
        "m._answered = fails; sys.argv = ['advisor', 'sheet', 'my coat.yaml']; m.run()"
    )
    env = {**os.environ, "ADVISOR_CACHE": str(tmp_path / "kept")}
    env.pop("ADVISOR_DEBUG", None)
    done = subprocess.run(
        [sys.executable, "-c", script],
        cwd=CHECKOUT,
        env=env,
        capture_output=True,
        text=True,
        check=False,
    )
    assert (3, "") == (done.returncode, done.stdout)
    (report,) = (tmp_path / "kept/reports").iterdir()
    assert str(report) in done.stderr
    text = report.read_text("utf-8")
    assert 'typed: advisor sheet "my coat.yaml"' in text
    assert "in fails" in text
    assert f"advisor {__version__}" in text
    blocked = tmp_path / "file"
    blocked.write_text("", "utf-8")
    env["ADVISOR_CACHE"] = str(blocked)
    done = subprocess.run(
        [sys.executable, "-c", script],
        cwd=CHECKOUT,
        env=env,
        capture_output=True,
        text=True,
        check=False,
    )
    assert 3 == done.returncode
    assert "ADVISOR_DEBUG" in done.stderr

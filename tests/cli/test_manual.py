"""The manual is made of the help: every command and option stands in it, as text and man page."""

from __future__ import annotations

import re
import shutil
import subprocess

import pytest

from advisor.cli.examples import EXAMPLES
from advisor.cli.front import COMMANDS
from advisor.cli.manual import man_page, parts, plain_text
from tests.typed import typed

MACROS = {"TH", "SH", "SS", "TP", "B", "PP", "nf", "fi"}


def test_every_command_stands_in_it_with_its_options() -> None:
    """In the order of the help; what `-h` says of an option the manual says too."""
    told = parts()
    usages = [part.usage for part in told]
    named = [usage.split()[1] for usage in usages]
    assert list(COMMANDS) == list(dict.fromkeys(named))
    for part in told:
        words = part.usage.split("[OPTIONS]")[0].split()[1:]
        help_ = typed(*[word for word in words if word.islower()], "-h").out
        for option in re.findall(r"(?m)^ +(--[a-z-]+)", help_):
            assert any(option in term for term, _ in part.rows) or option == "--help", option


def test_every_example_stands_in_it() -> None:
    """And as it is typed, with `advisor` before it."""
    text = plain_text(parts())
    assert len(EXAMPLES) > 10
    for lines in EXAMPLES.values():
        for line in lines:
            assert f"    $ advisor {line}\n" in text


def test_no_text_becomes_a_request_of_the_man_page() -> None:
    """Lines that begin with a dot are macros of man(7) alone, and no escape is left bare."""
    for line in man_page(parts()).splitlines():
        if line.startswith((".", "'")):
            assert line.split()[0].lstrip(".") in MACROS, line
        assert not re.search(r"\\(?![e&-])", line), line


def test_the_command_prints_both() -> None:
    """As text to read, and with --man for man."""
    assert plain_text(parts()) == typed("manual").out
    assert man_page(parts()) == typed("manual", "--man").out


@pytest.mark.skipif(shutil.which("groff") is None, reason="no groff here to read a man page")
def test_groff_has_nothing_to_say_against_the_man_page() -> None:
    """It is set without a warning, to its last part."""
    command, page = ["groff", "-k", "-man", "-Tutf8", "-ww"], man_page(parts()).encode()
    done = subprocess.run(command, input=page, capture_output=True, check=True)
    assert b"" == done.stderr
    assert b"interrupted" in done.stdout

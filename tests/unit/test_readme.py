"""Documents that cannot rot: the README and the commands know each other."""

from __future__ import annotations

import re
from collections.abc import Mapping
from pathlib import Path

import typer.main

from advisor.cli.app import app

CHECKOUT = Path(__file__).resolve().parents[2]
README = (CHECKOUT / "README.md").read_text("utf-8")
DEVELOPERS = (CHECKOUT / "DEVELOPERS.md").read_text("utf-8")

# The names that other people's checks rest on.
PROMISED = (
    "ask",
    "check",
    "example",
    "explain",
    "fabrics",
    "identify",
    "iron",
    "label",
    "learn",
    "manual",
    "order",
    "page",
    "quote",
    "schema",
    "sheet",
    "start",
    "why",
)


def commands() -> Mapping[str, str]:
    """Each registered command with its help, which is empty where there is none."""
    group = typer.main.get_command(app)
    found = getattr(group, "commands", {})
    return {name: (command.help or "").strip() for name, command in sorted(found.items())}


def shell_blocks() -> list[str]:
    """The shell blocks of the README in their order."""
    return re.findall(r"^```sh\n(.*?)^```$", README, flags=re.MULTILINE | re.DOTALL)


def test_every_promised_command_is_there_and_no_other() -> None:
    """The commands are exactly those whose names are fixed."""
    assert sorted(PROMISED) == list(commands())


def test_every_command_has_help() -> None:
    """No command is without a sentence that tells what it is for."""
    assert [] == [name for name, text in commands().items() if not text]


def test_the_readme_mentions_every_command() -> None:
    """Each registered command stands in the README as it is typed."""
    known = commands()
    assert known
    assert [] == [name for name in known if not re.search(rf"\badvisor {name}\b", README)]


def test_the_readme_mentions_no_command_that_does_not_exist() -> None:
    """Whatever the README shows as ``advisor WORD`` in code is a command."""
    pieces = [*re.findall(r"`([^`\n]+)`", README), *shell_blocks()]
    shown = {word for piece in pieces for word in re.findall(r"(?:^|[\s/])advisor ([a-z]+)", piece)}
    assert shown
    assert set() == shown - set(commands())


def test_the_readme_opens_with_the_job_and_two_commands() -> None:
    """Title, one paragraph, then a block that makes a sheet and a block that runs the tests."""
    title, job, *_ = README.split("\n\n")
    blocks = shell_blocks()
    assert title.startswith("# ")
    assert not job.startswith(("#", "```", "-", "|"))
    assert "advisor sheet knowledge/examples/" in blocks[0]
    assert "pytest" in blocks[1]


def test_the_readme_example_exists() -> None:
    """Every knowledge file that the README names is there."""
    named = re.findall(r"knowledge/[\w./-]+\.yaml", README)
    assert named
    assert [] == [name for name in named if not (CHECKOUT / name).is_file()]


def test_every_link_leads_somewhere() -> None:
    """Every link from one of the two documents to a file leads to a file."""
    links = set(re.findall(r"\]\((?!https?:|#)([^)#\s]+)", README + DEVELOPERS))
    assert [] == sorted(link for link in links if not (CHECKOUT / link).exists())


def test_developers_are_told_in_order() -> None:
    """DEVELOPERS.md tells how to add a fabric, a rule, an aspect, a kind of place and a command."""
    told = re.findall(r"^## Add (?:a|an) (\w+)", DEVELOPERS, flags=re.MULTILINE)
    assert ["fabric", "rule", "aspect", "kind", "command"] == told


def test_the_documents_leave_nothing_to_do() -> None:
    """Neither document holds a note to its writer."""
    assert [] == re.findall(r"\b(?:TODO|FIXME|XXX|TBD)\b", README + DEVELOPERS)

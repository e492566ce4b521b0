"""Whatever a project file holds, every command answers it or refuses it in words, and soon.

`ADVISOR_HOSTILE` says how many cases are run (2,000), `ADVISOR_HOSTILE_FROM` where they begin.
"""

from __future__ import annotations

import io
import os
import sys
import time
from pathlib import Path

import pytest

from advisor.cli.main import ended
from advisor.knowledge.model import Knowledge
from advisor.overlay import cache
from tests.laws import hostile

CASES = int(os.environ.get("ADVISOR_HOSTILE", "2000"))
FIRST = int(os.environ.get("ADVISOR_HOSTILE_FROM", "0"))
PARTS = 8
LONGEST = 10.0
"""Seconds of work that no case may take."""
COMMANDS = (
    ("check",),
    ("order",),
    ("sheet", "--only", "seams"),
    ("label",),
    ("check", "--json"),
    ("sheet",),
    ("iron",),
    ("sheet", "--json", "--units", "us"),
    ("order", "--sitting", "45min", "--plain"),
    ("sheet", "--html", "-"),
    ("label", "--market", "us"),
)


@pytest.fixture(scope="module")
def known() -> Knowledge:
    return cache.load_knowledge()


def answered(words: list[str], monkeypatch: pytest.MonkeyPatch) -> tuple[int, str]:
    """The exit code of a command and what it told; a fault of ours is raised as it is."""
    out, told = io.TextIOWrapper(io.BytesIO(), "utf-8"), io.StringIO()
    with monkeypatch.context() as patch:
        patch.setenv("ADVISOR_DEBUG", "1")
        patch.setattr(sys, "stdout", out)
        patch.setattr(sys, "stderr", told)
        code = ended(words)
    return code, told.getvalue()


@pytest.mark.parametrize("part", range(PARTS))
def test_no_project_is_answered_with_a_fault(
    part: int, known: Knowledge, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    """Exit 0, 1 or 2, never 3; what is refused names the file; nothing takes ten seconds."""
    monkeypatch.setattr(cache, "load_knowledge", lambda *_, **__: known)
    file = tmp_path / "p.yaml"
    for number in range(FIRST + part, FIRST + CASES, PARTS):
        file.write_bytes(hostile.case(number, known).encode("utf-8", "surrogatepass"))
        command, *options = COMMANDS[number // 4 % len(COMMANDS)]
        begun = time.process_time()
        try:
            code, told = answered([command, str(file), *options], monkeypatch)
        except Exception as error:
            raise AssertionError(f"case {number}, {command} {options}") from error
        took = time.process_time() - begun
        assert code in (0, 1, 2), (number, command, told)
        assert (code == 2) <= bool(told.strip()), (number, command)
        assert took < LONGEST, (number, command, took)


def test_the_cases_are_of_every_kind(known: Knowledge) -> None:
    """Some are answered and some refused, and the same number makes the same case."""
    texts = [hostile.case(number, known) for number in range(80)]
    assert texts == [hostile.case(number, known) for number in range(80)]
    assert len(set(texts)) > 70

"""Whatever a project file holds, every command answers it or refuses it in words, and soon.

`ADVISOR_HOSTILE` says how many cases are run (200 where CI is set, else 400; 100,000 take some
hours), `ADVISOR_HOSTILE_FROM` where they begin.
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
from advisor.overlay import cache as kept
from tests.laws import hostile
from tests.typed import parser, shipped

CASES = int(os.environ.get("ADVISOR_HOSTILE") or ("200" if os.environ.get("CI") else "400"))
FIRST = int(os.environ.get("ADVISOR_HOSTILE_FROM", "0"))
PARTS = 8
LONGEST = 10.0
"""Seconds of work that no case may take."""
QUICK = (("check",), ("label",), ("check", "--json"), ("order",), ("label", "--market", "us"))
SLOW = (
    ("sheet", "--only", "seams"),
    ("sheet",),
    ("iron",),
    ("sheet", "--json", "--units", "us"),
    ("order", "--sitting", "45min", "--plain"),
    ("sheet", "--html", "-"),
)
COMMANDS = tuple(
    command for slow in SLOW for command in (*QUICK, slow)
)  # the heat of a garment takes longest, so it is asked for only now and then


@pytest.fixture(autouse=True)
def _parser_made_once(monkeypatch: pytest.MonkeyPatch) -> None:
    """The option parser is the same for every case; making it anew would take half the time."""
    from advisor.cli import app

    monkeypatch.setattr(app, "app", parser())


@pytest.fixture(scope="module")
def known() -> Knowledge:
    return shipped()


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
    monkeypatch.setattr(kept, "load_knowledge", lambda *_, **__: known)
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


PLAIN = """\
garment: T
fabrics:
  shell: {fabric: linen suiting, weight: 240 g/m2}
  frill: {fabric: organza, fibres: {nylon: 100}}
seams:
  - {name: a, layers: [shell, frill], length: 13 cm}
"""
TUCKS = "finished width: 20 cm, finished height: 30 cm, tucks: {depth: 5 mm, number: 4}"
NAMED = [
    (
        PLAIN
        + "  - {name: b, layers: [shel], gathers: {method: foot, flat: 4 cm, gathered: 2 cm}}",
        "no fabric of this project is called 'shel'",
    ),
    (
        PLAIN + "  - {name: b, layers: [shel], pleats: {kind: knife, number: 4, depth: 1 cm}}",
        "no fabric of this project is called 'shel'",
    ),
    (PLAIN.replace("{nylon: 100}", '"100"'), "not understood: '100'"),
    (
        PLAIN
        + f"pieces: [{{name: x, fabric: shell, {TUCKS}}}, {{name: x, fabric: frill, {TUCKS}}}]\n",
        "",
    ),
]


@pytest.mark.parametrize("command", ["check", "order", "sheet"])
@pytest.mark.parametrize(("text", "message"), NAMED, ids=["gathers", "pleats", "fibres", "pieces"])
def test_what_once_was_a_fault_is_answered(
    text: str,
    message: str,
    command: str,
    tmp_path: Path,
    monkeypatch: pytest.MonkeyPatch,
    known: Knowledge,
) -> None:
    """Misspelt layers under gathers and pleats, a number for fibres, two pieces of one name."""
    monkeypatch.setattr(kept, "load_knowledge", lambda *_, **__: known)
    (tmp_path / "p.yaml").write_text(text, "utf-8")
    code, told = answered([command, str(tmp_path / "p.yaml")], monkeypatch)
    assert (code == 2, True) == (bool(message), message in told), told


@pytest.mark.parametrize("said", ["no\n", "stop\n", "no\nstop\n", "no\n\n\n", "", "n\nno label\n"])
def test_an_early_end_of_the_questions_is_answered(
    said: str, monkeypatch: pytest.MonkeyPatch, known: Knowledge
) -> None:
    """Warp and weft unlike, and nothing seen of either: what is known so far is told."""
    monkeypatch.setattr(kept, "load_knowledge", lambda *_, **__: known)
    monkeypatch.setattr(sys, "stdin", io.StringIO(said))
    assert 0 == answered(["identify"], monkeypatch)[0]

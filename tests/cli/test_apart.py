"""What only a process of its own can show: other seeds, the entry point, a reader gone away."""

from __future__ import annotations

import json
import os
import subprocess
import sys

import pytest

from tests.cli.test_commands import COAT, JACKET
from tests.typed import CHECKOUT, typed, typed_apart

LINEN_OVER_NYLON = ("iron", "linen suiting 240 g/m2", "nylon organza 30 g/m2")
DATA = [
    ("ask", "nylon organza", "linen suiting", "--json"),
    ("iron", "wool coating", "acetate lining", "--json"),
    (*LINEN_OVER_NYLON, "--json"),
    ("sheet", COAT, "--json"),
    ("check", COAT, "--json"),
    ("label", COAT, "--json"),
    ("explain", "organza", "--json"),
    ("fabrics", "knit", "--json"),
    ("why", JACKET, "cuff", "needle.size", "--json"),
]
TEXT = [
    ("order", JACKET),
    ("sheet", JACKET),
    ("identify", "--saw", "residue=bead", "--saw", "acetone=no change"),
]
SEVERAL = """
import json, sys
from tests.typed import typed
print(json.dumps([typed(*words).out for words in json.loads(sys.argv[1])]))
"""


@pytest.fixture(scope="module")
def elsewhere() -> dict[tuple[str, ...], str]:
    """What each command prints in another process, whose sets have another order."""
    asked = [*DATA, *TEXT]
    done = subprocess.run(
        [sys.executable, "-c", SEVERAL, json.dumps(asked)],
        cwd=CHECKOUT,
        env={**os.environ, "PYTHONPATH": str(CHECKOUT), "PYTHONHASHSEED": "16"},
        capture_output=True,
        timeout=600,
        check=True,
    )
    return dict(zip(asked, json.loads(done.stdout), strict=True))


@pytest.mark.parametrize("words", [*DATA, *TEXT], ids=lambda w: f"{w[0]}-{len(w)}")
def test_two_runs_are_equal_byte_for_byte(
    words: tuple[str, ...], elsewhere: dict[tuple[str, ...], str]
) -> None:
    """Seeded, rounded and in a fixed order: the same question has the same bytes."""
    assert typed(*words).out == elsewhere[words] != ""


@pytest.mark.parametrize("words", DATA, ids=lambda w: f"{w[0]}-{len(w)}")
def test_data_are_one_object(words: tuple[str, ...], elsewhere: dict[tuple[str, ...], str]) -> None:
    """With --json every answering command prints one JSON object that names its schema."""
    assert json.loads(elsewhere[words])["schema"].startswith("advisor.")


@pytest.mark.parametrize(
    "words", [("ask", "velvte"), ("ask", "nylon organza", "linen suiting"), ("check", COAT)]
)
def test_a_process_of_its_own_says_the_same(words: tuple[str, ...]) -> None:
    """Status and both streams are those of the tests that type in their own process."""
    assert typed(*words) == typed_apart(*words)


def test_the_tab_key_is_answered_by_the_entry_point() -> None:
    """A shell starts a process for it, and gets what the tests see in theirs."""
    line = {"COMP_WORDS": "advisor ask velvete", "COMP_CWORD": "2"}
    pressed = {**line, "_ADVISOR_COMPLETE": "complete_bash"}
    assert typed(env=pressed) == typed_apart(env=pressed)


def test_a_reader_who_goes_away_is_no_fault() -> None:
    """The pipe is closed before anything is written: no word of it, and no traceback."""
    process = subprocess.Popen(
        [sys.executable, "-m", "advisor", "explain", "velvet"],
        cwd=CHECKOUT,
        stdout=subprocess.PIPE,
        stderr=subprocess.PIPE,
    )
    assert process.stdout is not None
    assert process.stderr is not None
    process.stdout.close()
    told = process.stderr.read()
    assert (0, b"") == (process.wait(60), told)
    process.stderr.close()


@pytest.mark.parametrize(("word", "seldom"), [("--version", True), ("page", False)])
def test_a_process_looks_for_no_garbage_on_its_way_out(word: str, *, seldom: bool) -> None:
    """Neither while one answer is made, nor at the end; what lives long still looks for it."""
    script = (
        "import atexit, gc; from advisor.cli import main; atexit.register(lambda: print("
        "gc.get_threshold()[0] == main.MANY, gc.get_freeze_count() > 1000)); main.run()"
    )
    asked = [word] if seldom else [word, "--help"]
    done = subprocess.run(
        [sys.executable, "-c", script, *asked],
        env={**os.environ, "PYTHONPATH": str(CHECKOUT)},
        capture_output=True,
        timeout=600,
        check=True,
    )
    assert f"{seldom} True" == done.stdout.decode().splitlines()[-1]

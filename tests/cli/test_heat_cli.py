"""The heat as it is typed: words of one stack, the same bytes twice, and numpy only when asked.

The expected words are written anew with ADVISOR_WRITE_EXPECTED=1; read the difference.
"""

from __future__ import annotations

import json
import os
import subprocess
import sys
from pathlib import Path

import pytest

CHECKOUT = Path(__file__).resolve().parents[2]
EXPECTED = Path(__file__).parent / "expected"
JACKET = "knowledge/examples/bandstand-jacket.yaml"
LINEN_OVER_NYLON = ("iron", "linen suiting 240 g/m2", "nylon organza 30 g/m2")


def advisor(*arguments: str, python: tuple[str, ...] = ()) -> subprocess.CompletedProcess[bytes]:
    return subprocess.run(
        [sys.executable, *python, "-m", "advisor", *arguments],
        cwd=CHECKOUT,
        capture_output=True,
        timeout=120,
        check=False,
        env={**os.environ, "PYTHONPATH": str(CHECKOUT)},
    )


def heat_of(printed: bytes) -> str:
    """The section about heat, without what stands around it."""
    text = printed.decode().split("HEAT THROUGH THE LAYERS\n")[1]
    return text.split("\nTAKE CARE")[0]


@pytest.mark.parametrize("units", ["metric", "us"])
def test_prints_the_expected_words(units: str) -> None:
    """Table, picture and sentences of linen over nylon, in the maker's units."""
    done = advisor(*LINEN_OVER_NYLON, "--all", "--units", units)
    path = EXPECTED / f"heat-linen-over-nylon-{units}.txt"
    if os.environ.get("ADVISOR_WRITE_EXPECTED"):
        path.write_text(heat_of(done.stdout), encoding="utf-8")
    assert heat_of(done.stdout) == path.read_text(encoding="utf-8")
    assert (1, b"") == (done.returncode, done.stderr)


def test_two_runs_are_equal_byte_for_byte() -> None:
    """Seeded and rounded, the data of a stack are the same twice."""
    first, second = (advisor(*LINEN_OVER_NYLON, "--json") for _ in range(2))
    assert first.stdout == second.stdout
    assert json.loads(first.stdout)["heat"]


def test_the_sheet_has_the_same_rows_as_the_iron() -> None:
    """`heat` is one list, whoever asks."""
    iron, sheet = (json.loads(advisor(c, JACKET, "--json").stdout) for c in ("iron", "sheet"))
    assert iron["heat"] == sheet["heat"]
    assert {r["place"] for r in sheet["heat"]} <= {s["name"] for s in sheet["seams"]}


def test_a_question_brings_no_numpy_in() -> None:
    """`ask` stays quick: where nothing clashes under the iron, the heat model is not loaded."""
    asked = advisor("ask", "linen suiting", "silk organza", python=("-X", "importtime"))
    assert b"numpy" not in asked.stderr
    ironed = advisor(*LINEN_OVER_NYLON, python=("-X", "importtime"))
    assert b"numpy" in ironed.stderr


def test_what_bears_no_iron_has_no_rows() -> None:
    """Sequins are not pressed, so nothing is computed and nothing is called safe."""
    done = advisor("iron", "polyester sequinned", "pure wool coating", "--json")
    assert json.loads(done.stdout)["heat"] == []

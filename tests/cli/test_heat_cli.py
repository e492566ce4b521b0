"""The heat as it is typed: words of one stack, and numpy only when asked.

The expected words are written anew with ADVISOR_WRITE_EXPECTED=1; read the difference.
"""

from __future__ import annotations

import json
import os
import shutil
from pathlib import Path

import pytest

from advisor.overlay.places import cache_folder
from tests.typed import shipped, typed, typed_apart

CHECKOUT = Path(__file__).resolve().parents[2]
EXPECTED = Path(__file__).parent / "expected"
JACKET = "knowledge/examples/bandstand-jacket.yaml"
LINEN_OVER_NYLON = ("iron", "linen suiting 240 g/m2", "nylon organza 30 g/m2")


def heat_of(printed: bytes) -> str:
    """The section about heat, without what stands around it."""
    text = printed.decode().split("HEAT THROUGH THE LAYERS\n")[1]
    return text.split("\nTAKE CARE")[0]


@pytest.mark.parametrize("units", ["metric", "us"])
def test_prints_the_expected_words(units: str) -> None:
    """Table, picture and sentences of linen over nylon, in the maker's units."""
    done = typed(*LINEN_OVER_NYLON, "--all", "--units", units)
    path = EXPECTED / f"heat-linen-over-nylon-{units}.txt"
    if os.environ.get("ADVISOR_WRITE_EXPECTED"):
        path.write_text(heat_of(done.stdout), encoding="utf-8")
    assert heat_of(done.stdout) == path.read_text(encoding="utf-8")
    assert (1, b"") == (done.returncode, done.stderr)


def test_the_sheet_has_the_same_rows_as_the_iron() -> None:
    """`heat` is one list, whoever asks."""
    iron, sheet = (json.loads(typed(c, JACKET, "--json").stdout) for c in ("iron", "sheet"))
    assert iron["heat"] == sheet["heat"]
    assert {r["place"] for r in sheet["heat"]} <= {s["name"] for s in sheet["seams"]}


def test_a_question_brings_no_numpy_in() -> None:
    """`ask` stays quick: where nothing clashes under the iron, the heat model is not loaded."""
    asked = typed_apart("ask", "linen suiting", "silk organza", python=("-X", "importtime"))
    assert b"numpy" not in asked.stderr


def test_what_is_kept_on_the_disk_brings_no_numpy_in(tmp_path: Path) -> None:
    """Worked out by the first command, told by the second, in the same words."""
    shipped()  # so that it lies in the cache of the run
    shutil.copytree(cache_folder(), tmp_path / "kept", ignore=shutil.ignore_patterns("heat"))
    cache = {"ADVISOR_CACHE": str(tmp_path / "kept")}
    first, second = (
        typed_apart(*LINEN_OVER_NYLON, python=("-X", "importtime"), env=cache) for _ in range(2)
    )
    assert b"numpy" in first.stderr
    assert b"numpy" not in second.stderr
    assert first.stdout == second.stdout


def test_what_bears_no_iron_has_no_rows() -> None:
    """Sequins are not pressed, so nothing is computed and nothing is called safe."""
    done = typed("iron", "polyester sequinned", "pure wool coating", "--json")
    assert json.loads(done.stdout)["heat"] == []

"""What `advisor sheet` says of building and buying: sections by themselves, and the JSON keys.

The printed words are compared with tests/cli/expected; ADVISOR_WRITE_EXPECTED=1 writes them anew.
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
COAT = "knowledge/examples/lantern-parade-coat.yaml"
DRESS = "knowledge/examples/allotment-apron-dress.yaml"


def advisor(*arguments: str) -> subprocess.CompletedProcess[bytes]:
    return subprocess.run(
        [sys.executable, "-m", "advisor", *arguments], cwd=CHECKOUT, capture_output=True,
        timeout=120, check=False,
        env={**os.environ, "PYTHONPATH": str(CHECKOUT), "COLUMNS": "80",
             "ADVISOR_SETTINGS": os.devnull},
    )  # fmt: skip


PRINTED = {
    "only-shopping-jacket": ("sheet", JACKET, "--only", "shopping"),
    "only-shopping-coat-us": ("sheet", COAT, "--only", "shopping", "--units", "us"),
    "only-shopping-dress": ("sheet", DRESS, "--only", "shopping"),
    "only-seams-jacket": ("sheet", JACKET, "--only", "seams"),
    "only-tests-jacket": ("sheet", JACKET, "--only", "tests"),
    "why-bulk": ("why", JACKET, "armhole", "seam.bulk"),
}


@pytest.mark.parametrize("name", PRINTED)
def test_prints_the_expected_words(name: str) -> None:
    """A section holds just what the expected file does."""
    done = advisor(*PRINTED[name])
    path = EXPECTED / f"{name}.txt"
    if os.environ.get("ADVISOR_WRITE_EXPECTED"):
        path.write_bytes(done.stdout)
    assert done.stdout.decode() == path.read_text(encoding="utf-8")
    assert done.stderr == b""


def test_json_has_the_keys_of_the_contract() -> None:
    """Seams, cloth, thread and kit, each with the keys that other programs rest on."""
    data = json.loads(advisor("sheet", JACKET, "--json").stdout)
    seam = data["seams"][0]
    keys = {"name", "plies", "thickness_mm", "under_foot_mm", "allowance_mm", "finish", "needs_mm",
            "strength_n_per_cm", "thread_m"}  # fmt: skip
    assert keys <= set(seam)
    assert {"needle", "bobbin", "looper"} <= set(seam["thread_m"])
    assert {"fabric", "width_mm", "length_mm", "buy"} <= set(data["cloth"][0])
    assert {"colour", "needle_m", "bobbin_m", "looper_m", "buy"} <= set(data["thread"][0])
    assert {"item", "for", "state", "instead"} <= set(data["kit"][0])
    assert all(s["checked"] for row in data["kit"] for s in row["instead"])


def test_every_source_of_the_build_is_listed() -> None:
    """Whatever a row cites stands in the list of sources."""
    data = json.loads(advisor("sheet", COAT, "--json").stdout)
    listed = {row["id"] for row in data["sources"]}
    cited = {s for row in data["seams"] for s in row["build_sources"]}
    cited |= {s for key in ("cloth", "thread") for row in data[key] for s in row["sources"]}
    cited |= {s for row in data["kit"] for other in row["instead"] for s in other["sources"]}
    assert cited
    assert {text.split(" ", 1)[0] for text in cited} <= listed


def test_results_of_scraps_stand_at_their_test() -> None:
    """What the project wrote down comes back with the sandwich that it belongs to."""
    data = json.loads(advisor("sheet", JACKET, "--json").stdout)
    (row,) = [test for test in data["tests"] if test["results"]]
    assert "lining side" in row["places"]
    assert row["results"][0]["works"] is True


def test_an_unknown_section_is_refused() -> None:
    """With the nearest name, and status 2."""
    done = advisor("sheet", JACKET, "--only", "shoping")
    assert 2 == done.returncode
    assert b"Did you mean 'shopping'?" in done.stderr


SECTIONS = ("conflicts", "cautions", "cloths", "garment", "unknowns", "cloth", "thread", "kit")


@pytest.mark.parametrize("name", SECTIONS)
def test_every_section_can_be_printed_alone(name: str) -> None:
    """It begins with the garment, says something, and ends with its sources."""
    text = advisor("sheet", COAT, "--only", name).stdout.decode()
    assert text.startswith("Lantern parade coat: ")
    assert "Nothing to say here." not in text
    assert len(text.splitlines()) > 5

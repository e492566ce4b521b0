"""What `advisor sheet` says of building and buying, a section by itself.

The printed words are compared with tests/cli/expected; ADVISOR_WRITE_EXPECTED=1 writes them anew.
"""

from __future__ import annotations

import os
import subprocess
import sys
from pathlib import Path

import pytest

CHECKOUT = Path(__file__).resolve().parents[2]
EXPECTED = Path(__file__).parent / "expected"
JACKET = "knowledge/examples/bandstand-jacket.yaml"
COAT = "knowledge/examples/lantern-parade-coat.yaml"


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


def test_an_unknown_section_is_refused() -> None:
    """With the nearest name, and status 2."""
    done = advisor("sheet", JACKET, "--only", "shoping")
    assert 2 == done.returncode
    assert b"Did you mean 'shopping'?" in done.stderr


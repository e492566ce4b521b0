"""The scripts run and print ratios; how large these are is for a quiet machine to say."""

from __future__ import annotations

import re
import subprocess
import sys
from pathlib import Path

import pytest

CHECKOUT = Path(__file__).resolve().parents[2]

DEMO = "knowledge/examples/allotment-apron-dress.yaml"


@pytest.mark.bench
@pytest.mark.parametrize(
    ("script", "arguments", "ratios"),
    [
        ("bench_start", ["1", DEMO], 5),
        ("bench_decide", ["3"], 2),
        ("bench_growth", ["2"], 2),
        ("bench_page", ["2"], 5),
    ],
)
def test_a_script_prints_its_ratios(script: str, arguments: list[str], ratios: int) -> None:
    """Each ends well and prints as many ratios as it promises, all above nothing."""
    done = subprocess.run(
        [sys.executable, "-m", f"tests.bench.{script}", *arguments],
        cwd=CHECKOUT,
        capture_output=True,
        text=True,
        timeout=300,
        check=False,
    )
    assert 0 == done.returncode, done.stderr
    found = re.findall(r"(?:ratio [a-z ]*?|to CLIPS )(\d+\.\d+)", done.stdout)
    assert ratios == len(found), done.stdout
    assert all(float(ratio) > 0 for ratio in found)

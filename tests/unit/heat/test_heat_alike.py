"""The exponential and the logarithm of the heat model, and that no processor changes an answer."""

from __future__ import annotations

import os
import subprocess
import sys
from pathlib import Path

import numpy as np
import pytest

from advisor.heat.model.alike import exp, log

ROOT = Path(__file__).parents[3]
LATER = "AVX2 FMA3 AVX512F AVX512CD AVX512_SKX AVX512_CLX AVX512_CNL AVX512_ICL AVX512_SPR"
"""Instructions that a processor may have or not, in the names of older and newer numpy."""


def test_the_exponential_is_that_of_the_library() -> None:
    """Within a few units of the fifteenth digit, wherever water is reckoned with and beyond."""
    x = np.linspace(-60.0, 60.0, 40001)
    assert np.abs(exp(x) / np.exp(x) - 1.0).max() < 4e-15
    assert exp(np.array([0.0]))[0] == 1.0


def test_the_logarithm_is_that_of_the_library() -> None:
    """The same for what is above nothing."""
    x = np.geomspace(1e-9, 1e9, 40001)
    assert np.abs(log(x) - np.log(x)).max() < 1e-14
    beyond = np.geomspace(1e-9, 1e-2, 999)
    above = 1.0 + beyond
    assert np.abs(log(above) / np.log1p(above - 1.0) - 1.0).max() < 4e-15


MOIST = """
from advisor.heat.model.bands import draws_for
from advisor.heat.model.solve import course, record_times
from tests.unit.heat.test_heat_answer import stack
import hashlib
for moisture in ("damp cloth", "steam"):
    made = stack(moisture=moisture)
    found = course([made], [draws_for(made, 8, 20)], record_times())
    print(moisture, hashlib.sha256(found.hottest.tobytes()).hexdigest())
"""


def worked_out(without: str) -> str:
    """All temperatures of two moist stacks as if the processor lacked some instructions."""
    env = os.environ | {"NPY_DISABLE_CPU_FEATURES": without, "PYTHONPATH": str(ROOT)}
    ran = [sys.executable, "-W", "ignore", "-c", MOIST]
    return subprocess.run(ran, env=env, capture_output=True, text=True, check=True).stdout


@pytest.mark.parametrize("without", [LATER, f"{LATER} X86_V4 X86_V3"])
def test_no_processor_changes_a_moist_answer(without: str) -> None:
    """Where water boils off, the last digit of a library's exponential was half a degree."""
    assert worked_out(without) == worked_out("")

"""What every test shares: how Hypothesis searches, where the checkout is, and a browser."""

from __future__ import annotations

import os
import shutil
from pathlib import Path

import pytest
from hypothesis import HealthCheck, settings

# Time limits would fail a law because the machine is busy, not because the law is broken.
settings.register_profile(
    "here", deadline=None, suppress_health_check=[HealthCheck.too_slow], print_blob=True
)
# Derandomised: the same commit gives the same verdict, and nothing is remembered between runs.
settings.register_profile("ci", settings.get_profile("here"), derandomize=True, database=None)
settings.load_profile("ci" if os.environ.get("CI") else "here")

BROWSERS = ("chromium", "chromium-browser")


@pytest.fixture(scope="session")
def checkout() -> Path:
    """The folder that holds README.md, the package and the knowledge."""
    return Path(__file__).resolve().parents[1]


@pytest.fixture(scope="session")
def chromium() -> str:
    """The path of an installed chromium; without one the test is skipped.

    Where ``ADVISOR_BROWSER=required`` a missing browser is a failure, so that a page nobody
    looked at never passes for a page that works.
    """
    for name in BROWSERS:
        if found := shutil.which(name):
            return found
    if os.environ.get("ADVISOR_BROWSER") == "required":
        pytest.fail("a browser is required here, but no chromium is installed")
    pytest.skip("no chromium is installed")

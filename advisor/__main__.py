"""`python -m advisor`."""

from __future__ import annotations

from advisor.cli.main import run

run()

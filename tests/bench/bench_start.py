"""How long a whole `advisor ask` takes on a warm cache, against importing what it could rest on.

Run from the checkout with `python -m tests.bench.bench_start [runs]`. The two are run in turns, so
that a busy minute slows both, and the medians are compared. The aim is a ratio of 1.3 or less.
"""

from __future__ import annotations

import os
import statistics
import subprocess
import sys
import tempfile
from pathlib import Path
from time import perf_counter

CHECKOUT = Path(__file__).resolve().parents[2]
YARDSTICK = [sys.executable, "-c", "import pydantic, typer, rich.console"]
START = "import sys; from advisor.cli.main import run; sys.argv[0] = 'advisor'; run()"
ASK = [sys.executable, "-c", START, "ask", "nylon organza", "linen suiting 240 g/m2"]


def took(command: list[str], environment: dict[str, str]) -> float:
    """Seconds of one whole process.

    Raises:
        RuntimeError: it neither answered nor found a conflict.
    """
    begun = perf_counter()
    done = subprocess.run(command, cwd=CHECKOUT, env=environment, capture_output=True, check=False)
    if done.returncode not in (0, 1):
        raise RuntimeError(done.stderr.decode())
    return perf_counter() - begun


def main(runs: int = 40) -> float:
    """Print both medians and their ratio."""
    with tempfile.TemporaryDirectory() as kept:
        environment = os.environ | {"ADVISOR_CACHE": kept}
        took(ASK, environment), took(YARDSTICK, environment)
        ask, imports = [], []
        for _ in range(runs):
            ask.append(took(ASK, environment))
            imports.append(took(YARDSTICK, environment))
    ours, theirs = statistics.median(ask), statistics.median(imports)
    sys.stdout.write(
        f"ask {ours * 1000:.0f} ms, importing pydantic, typer and rich {theirs * 1000:.0f} ms\n"
        f"ratio {ours / theirs:.2f} (aim: at most 1.3)\n"
    )
    return ours / theirs


if __name__ == "__main__":
    main(*(int(word) for word in sys.argv[1:]))

"""What a whole command costs on warm caches, against importing what it could rest on.

Run from the checkout with `python -m tests.bench.bench_start [runs]`. All are run in turns, so
that a busy minute slows all of them, and the medians of the processor's seconds are compared.
The aims are ratios of 1.3 or less for a question, 5 or less for a garment of twelve places.
"""

from __future__ import annotations

import os
import resource
import shutil
import statistics
import subprocess
import sys
import tempfile
from pathlib import Path

CHECKOUT = Path(__file__).resolve().parents[2]
YARDSTICK = [sys.executable, "-c", "import pydantic, typer, rich.console"]
START = "import sys; from advisor.cli.main import run; sys.argv[0] = 'advisor'; run()"
COAT = "knowledge/examples/lantern-parade-coat.yaml"
COMMANDS = {
    "ask": (["ask", "nylon organza", "linen suiting 240 g/m2"], "at most 1.3"),
    "sheet": (["sheet"], "at most 5"),
    "iron": (["iron"], "at most 5"),
    "check": (["check"], "at most 5"),
}
ANEW = "sheet, heat anew"


def took(command: list[str], environment: dict[str, str]) -> float:
    """Seconds of the processor that one whole process takes.

    Raises:
        RuntimeError: it neither answered nor found a conflict.
    """
    before = resource.getrusage(resource.RUSAGE_CHILDREN)
    done = subprocess.run(command, cwd=CHECKOUT, env=environment, capture_output=True, check=False)
    if done.returncode not in (0, 1):
        raise RuntimeError(done.stderr.decode())
    after = resource.getrusage(resource.RUSAGE_CHILDREN)
    return after.ru_utime + after.ru_stime - before.ru_utime - before.ru_stime


def typed(words: list[str]) -> list[str]:
    """The command in a process of its own."""
    return [sys.executable, "-c", START, *words]


def main(runs: int = 15, demo: str = COAT) -> dict[str, float]:
    """Print the medians and their ratios."""
    commands = {
        name: typed([*words, demo] if name != "ask" else words)
        for name, (words, _) in COMMANDS.items()
    }
    spans: dict[str, list[float]] = {name: [] for name in ("imports", *commands, ANEW)}
    with tempfile.TemporaryDirectory() as kept:
        environment = os.environ | {"ADVISOR_CACHE": kept}
        environment.pop("PYTHONDONTWRITEBYTECODE", None)
        took(YARDSTICK, environment)
        for command in commands.values():
            took(command, environment)
        for _ in range(runs):
            spans["imports"].append(took(YARDSTICK, environment))
            for name, command in commands.items():
                spans[name].append(took(command, environment))
        for _ in range(runs):
            shutil.rmtree(Path(kept) / "heat")
            spans[ANEW].append(took(commands["sheet"], environment))
    found = {name: statistics.median(times) for name, times in spans.items()}
    sys.stdout.write(f"importing pydantic, typer and rich: {found['imports'] * 1000:.0f} ms\n")
    for name in (*commands, ANEW):
        ratio = found[name] / found["imports"]
        aim = f" (aim: {COMMANDS[name][1]})" if name in COMMANDS else ""
        sys.stdout.write(f"{name}: {found[name] * 1000:.0f} ms, ratio {ratio:.2f}{aim}\n")
    return found


if __name__ == "__main__":
    main(int(sys.argv[1]) if sys.argv[1:] else 15, *sys.argv[2:3])

"""How long the heat model takes, as ratios to a plain full solve of the same size.

Run from the checkout with `python -m tests.bench.bench_heat`. It prints and asserts nothing,
because a busy machine proves nothing.
"""

from __future__ import annotations

import sys
import time
from collections.abc import Callable

import numpy as np

from advisor.heat.model.answer import answers
from advisor.heat.model.dialogue import HeatQuestion
from advisor.heat.model.materials import NOTHING, FibreHeat, Range, cloth
from advisor.heat.model.solve import trace
from advisor.heat.model.stack import sole_at, under_iron

SEAMS = 12


def best_ms(work: Callable[[], object], times: int = 5) -> float:
    """The shortest of several runs in milliseconds."""
    spans = []
    for _ in range(times):
        start = time.perf_counter()
        work()
        spans.append(time.perf_counter() - start)
    return min(spans) * 1000.0


def main() -> None:
    """Print each measurement and its ratio."""
    cotton = FibreHeat(1.52, Range(1220, 1285, 1350), Range(0.2, 0.3, 0.5))
    regain = Range(0.07, 0.075, 0.085)
    dry = under_iron([cloth("shell", 120.0, cotton), cloth("lining", 60.0, cotton)], sole_at(150))
    moist = under_iron(
        [cloth("shell", 120.0, cotton, "woven", regain), cloth("lining", 60.0, cotton)],
        sole_at(150),
    )
    chance = np.random.default_rng(1)
    square = np.eye(24) * 30.0 + chance.random((24, 24))
    unit = best_ms(lambda: [np.linalg.solve(square, square[0]) for _ in range(100)]) / 100.0
    questions = [HeatQuestion(f"seam {i}", moist) for i in range(SEAMS)]
    assert moist.layers[0].water_gsm != NOTHING
    work: list[tuple[str, Callable[[], object]]] = [
        ("one dry stack, mid values", lambda: trace([dry])),
        ("one moist stack, mid values", lambda: trace([moist])),
        (f"{SEAMS} dry stacks in one call", lambda: trace([dry] * SEAMS)),
        (f"{SEAMS} moist stacks in one call", lambda: trace([moist] * SEAMS)),
        ("one answer with its band", lambda: answers(questions[:1])),
        (f"{SEAMS} answers with their bands", lambda: answers(questions)),
    ]
    found = {name: best_ms(run) for name, run in work}
    out = sys.stdout.write
    out(f"unit: a full solve of 24 unknowns, {unit * 1000.0:.1f} us\n")
    for name, took in found.items():
        out(f"{name:36s} {took:8.2f} ms  {took / unit:9.0f} units\n")
    one, all_seams = (found[name] for name in list(found)[-2:])
    out(f"{SEAMS} answers together cost {all_seams / one:.1f} times one alone\n")


if __name__ == "__main__":
    main()

"""How much faster the planner is than OR-Tools CP-SAT on garments of forty steps.

Run from the checkout with `python -m tests.bench.bench_order [garments] [seconds]`. CP-SAT
has one worker and a limit of time for each garment; where it has not proved its answer by then
the ratio is a lower one, marked with a sign. The planner's time is the best of three.
"""

from __future__ import annotations

import math
import sys
from time import perf_counter

from advisor.order.costs import CostTable
from advisor.order.plan import OrderPlan
from advisor.order.search import plan
from advisor.order.steps import Precedence, Step
from tests.unit.order.order_cases import by_cp_sat, garment

STEPS = 40
TIES = (0.1, 0.2, 0.35)


def compare(seed: int, limit: float) -> tuple[float, bool, str]:
    """One garment: the ratio of times, whether the answers agree, and a line to print."""
    ties = TIES[seed % len(TIES)]
    steps, precedences = garment(seed, STEPS, ties=ties, machines=8, irons=4)
    ours, found = min((_timed(steps, precedences) for _ in range(3)), key=lambda pair: pair[0])
    begun = perf_counter()
    least, proved = by_cp_sat(steps, precedences, CostTable(), limit)
    theirs = perf_counter() - begun
    cost = round(found.cost * 60)
    agree = found.optimal and (cost == least if proved else least < 0 or cost <= least)
    ratio = theirs / ours
    sign = "=" if proved else ">"
    return (
        ratio,
        agree,
        (
            f"ties {ties:<5} {found.cost:6.2f} min  optimal {found.optimal!s:5}  "
            f"{ours * 1000:8.1f} ms against {theirs:7.2f} s  ratio {sign} {ratio:7.0f}"
        ),
    )


def _timed(steps: list[Step], precedences: list[Precedence]) -> tuple[float, OrderPlan]:
    begun = perf_counter()
    found = plan(steps, precedences)
    return perf_counter() - begun, found


def main(garments: int = 9, limit: float = 60.0) -> int:
    """Print a line for each garment and the ratios; 1 where an answer differs, else 0."""
    ratios, agreed = [], True
    for seed in range(garments):
        ratio, agree, line = compare(seed, limit)
        ratios.append(ratio)
        agreed = agreed and agree
        print(line, flush=True)  # noqa: T201 - a script's answer
    middle = math.exp(sum(map(math.log, ratios)) / len(ratios))
    print(f"ratio: least {min(ratios):.0f}, geometric mean {middle:.0f}, agreed {agreed}")  # noqa: T201
    return 0 if agreed else 1


if __name__ == "__main__":
    sys.exit(main(*(int(word) for word in sys.argv[1:])))

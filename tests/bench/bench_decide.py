"""How long deciding a garment of twelve seams and six cloths takes, against clingo and CLIPS.

Run from the checkout with `python -m tests.bench.bench_decide [runs]`. Ours gathers everything
said, with the facts behind it, and combines it. The other two match the same rules against the
same facts; CLIPS also lets cloths speak, keeps who said what, and meets musts and wishes; clingo
meets the musts of rules only. Reading their rules is not counted, grounding is. All three have to
fire the same rules in the same places. The aim is to be five times faster than either.
"""

from __future__ import annotations

import statistics
import sys
from collections.abc import Callable
from functools import partial
from time import perf_counter
from typing import Any

from advisor.claims.judgement import Judgement
from advisor.decide.evaluate import judge
from tests.bench import decide_clingo, decide_clips
from tests.bench.decide_cases import case, garment, known


def timed(work: Callable[[], Any]) -> tuple[float, Any]:
    """Milliseconds of one run, and its result."""
    begun = perf_counter()
    found = work()
    return (perf_counter() - begun) * 1000.0, found


def fired_of(judgement: Judgement) -> set[tuple[str, str]]:
    """The rules about seams that fired, as the others name the places."""
    places = {seam.name: f"s{i}" for i, seam in enumerate(garment().seams)}
    return {
        (f.rule.id, places.get(f.place.name, "whole"))
        for f in judgement.gathered.fired
        if f.rule.shape != "layer"
    }


def main(runs: int = 15) -> tuple[float, float]:
    """Print the three medians and the two ratios."""
    shapes = {rule.id: rule.shape for rule in known().rules}
    judgement = judge(garment(), known())
    prepared = decide_clips.prepare(case())
    spans: dict[str, list[float]] = {"ours": [], "clingo": [], "CLIPS": []}
    fired: Any = None
    also: Any = None
    for turn in range(runs):  # in turns, so that a busy moment slows all three
        spans["ours"].append(timed(lambda: judge(garment(), known()))[0])
        took, also = timed(lambda: decide_clips.work(prepared))
        spans["CLIPS"].append(took)
        if turn % 3 == 0:
            control = decide_clingo.prepare(case())
            took, fired = timed(partial(decide_clingo.work, control))
            spans["clingo"].append(took)
    ours, rules, clips = (statistics.median(spans[name]) for name in ("ours", "clingo", "CLIPS"))
    for name, found in (("clingo", fired), ("CLIPS", also)):
        of_seams = {(rule, place) for rule, place in found if shapes[rule] != "layer"}
        if of_seams != fired_of(judgement):
            raise AssertionError(f"{name} fires other rules: {of_seams ^ fired_of(judgement)}")
    sys.stdout.write(
        f"ours {ours:.1f} ms for {len(garment().seams)} seams and {len(known().rules)} rules, "
        f"clingo {rules:.0f} ms, CLIPS {clips:.0f} ms\n"
        f"ratio to clingo {rules / ours:.1f}, to CLIPS {clips / ours:.1f} (aim: at least 5)\n"
    )
    return rules / ours, clips / ours


if __name__ == "__main__":
    main(*(int(word) for word in sys.argv[1:]))

"""Two garments in one file: each is worked in one run, and not both by turns for a thread's sake.

Between two things that the whole waits for, as a fitting, the part that is put on by itself comes
after the rest. What the one waits for of the other, as a fastening, stays where it was.
"""

from __future__ import annotations

from collections.abc import Iterable
from typing import Final

from advisor.order.graph import Graph, settle
from advisor.order.steps import Precedence
from advisor.order.tasks import Task

WHY: Final = "No place joins them, so the one is worked as far as it goes before the other."
SOURCES: Final = ("common-practice",)

FIT: Final = "fit"


def in_one_run(tasks: Iterable[Task], graph: Graph) -> tuple[Precedence, ...]:
    """The precedences that keep what is put on by itself together, after the rest."""
    byid = {task.id: task for task in tasks}
    of = {name: t.place.alone for name, t in byid.items() if t.place is not None}
    found: list[Precedence] = []
    names = ["", *sorted(set(of.values()) - {""})]
    for k, later in enumerate(names[1:], 1):
        firsts = {n for n, part in of.items() if part in names[:k]}
        seconds = {n for n, part in of.items() if part == later}
        loose = byid.keys() - of.keys()
        # A second fitting that only the one waits for belongs to that, and is no gate for both.
        only = {n for n in loose if seconds.isdisjoint(graph.forced_after(n))}
        firsts |= {n for n in only if not firsts.isdisjoint(graph.forced_after(n))}
        found += _runs(sorted(firsts), sorted(seconds), graph)
        found += _after_the_fitting(found, seconds, graph)
    kept, _ = settle(graph.steps, (*graph.precedences, *found))
    return tuple(item for item in kept if item in set(found))


def _after_the_fitting(
    found: Iterable[Precedence], seconds: set[str], graph: Graph
) -> list[Precedence]:
    """What no fitting waits for, nor it for that, is worked with the rest of its run."""
    ends = sorted({p.before for p in found if FIT in graph.forced_before(p.before)})
    free = {n for n in seconds if FIT not in graph.forced_after(n)}
    free -= {n for n in seconds if FIT in graph.forced_before(n)}
    starts = sorted(n for n in free if free.isdisjoint(graph.forced_before(n)))
    return [Precedence(a, b, WHY, SOURCES, "may") for a in ends for b in starts]


def _runs(firsts: list[str], seconds: list[str], graph: Graph) -> list[Precedence]:
    """The ends of each run of the one before the beginnings of that of the other."""
    own = {*firsts, *seconds}
    before = {n: set(graph.forced_before(n)) for n in own}
    gates = {n: frozenset(before[n] - own) for n in own}
    found = []
    for gate in sorted(set(gates.values()), key=sorted):
        theirs = [n for n in seconds if gates[n] == gate]
        mine = [n for n in firsts if gates[n] == gate and before[n].isdisjoint(theirs)]
        ends = [n for n in mine if not any(n in before[m] for m in mine)]
        starts = [n for n in theirs if before[n].isdisjoint(theirs)]
        found += [Precedence(a, b, WHY, SOURCES, "may") for a in ends for b in starts]
    return found

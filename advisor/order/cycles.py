"""Musts that chase each other: the smallest cycle is a conflict, with remedies that were tried.

One link of each cycle is given up, the maker's own first, so that the rest can be planned. All
that is said of the same two seams goes with it, for a seam that does not cross another need not
wait for its pressing either.
"""

from __future__ import annotations

import itertools
from collections.abc import Sequence

from msgspec import Struct
from msgspec.structs import replace

from advisor.order.graph import CycleError, build, settle
from advisor.order.kinds import SeamPlace, crosses
from advisor.order.steps import Precedence, Step
from advisor.order.tasks import Task
from advisor.order.wished_steps import YOU_SAID

MOST_REMEDIES = 6
"""How many ways out of one cycle are looked for; a sheet prints three."""


class Cycle(Struct, frozen=True):
    """Precedences that chase each other, the one given up for it, and what would end it."""

    links: tuple[Precedence, ...]
    given_up: Precedence
    remedies: tuple[str, ...]


def settled(
    tasks: Sequence[Task], items: list[Precedence], weights: dict[Precedence, int]
) -> tuple[tuple[Precedence, ...], tuple[Precedence, ...], tuple[Cycle, ...]]:
    """What can hold together, the weaker ones given up, and every cycle of musts."""
    steps = [task.step for task in tasks]
    cycles: list[Cycle] = []
    while True:
        try:
            kept, given_up = settle(steps, items, weights)
        except CycleError as error:
            byid = {task.id: task for task in tasks}
            cycles.append(_cycle(error.cycle, byid, items, steps))
            items = _without(items, cycles[-1].given_up, byid)
            continue
        return kept, given_up, tuple(cycles)


def _without(items: list[Precedence], link: Precedence, byid: dict[str, Task]) -> list[Precedence]:
    """The precedences without a link, and without whatever else is said of the same two seams."""
    first, second = byid[link.before].place, byid[link.after].place
    if first is None or second is None or first.name == second.name:
        return [p for p in items if (p.before, p.after) != (link.before, link.after)]
    names = (first.name, second.name)
    return [
        p
        for p in items
        if p.strength != "must" or tuple(_seam(byid[n]) for n in (p.before, p.after)) != names
    ]


def _seam(task: Task) -> str:
    return task.place.name if task.place else ""


def _cycle(
    links: tuple[Precedence, ...],
    byid: dict[str, Task],
    items: list[Precedence],
    steps: Sequence[Step],
) -> Cycle:
    """The cycle, the link given up for it, and the remedies that were tried and end it."""
    own = [p for p in links if p.why.startswith(YOU_SAID)]
    between = [p for p in links if _seam(byid[p.before]) != _seam(byid[p.after])]
    ending = (
        _remedy(link, byid, own=link in own)
        for link in dict.fromkeys([*own, *between])
        if _ends(_without(items, link, byid), links, steps)
    )
    remedies = list(itertools.islice(filter(None, ending), MOST_REMEDIES))
    given_up = (own or between or list(links))[0]
    return Cycle(links, given_up, tuple(dict.fromkeys(remedies)))


def _ends(left: list[Precedence], links: tuple[Precedence, ...], steps: Sequence[Step]) -> bool:
    """Whether what is left can be ordered, or fails for some other cycle."""
    try:
        build(steps, [p for p in left if p.strength == "must"])
    except CycleError as error:
        return not set(error.cycle) & set(links)
    return True


def _crosses_all_the_same(later: SeamPlace, earlier: SeamPlace) -> bool:
    """Whether what it crosses, said without the other, leaves it over that: a list tells no more
    of what is laid on a piece, as a pocket.
    """
    left = (later.crosses or frozenset()) - {earlier.name}
    unsaid = None if later.crosses else frozenset({""})
    return crosses(replace(later, crosses=left or unsaid), earlier)


def _remedy(link: Precedence, byid: dict[str, Task], *, own: bool) -> str:
    first, second = byid[link.before].place, byid[link.after].place
    if own:
        return f"Take out of your order that '{link.before}' comes before '{link.after}'."
    if first is None or second is None or not crosses(second, first):
        return ""
    if _crosses_all_the_same(second, first):
        return ""  # no word on what it crosses would end this
    if second.crosses is not None and first.name in second.crosses:
        return f"Take '{first.name}' out of the seams that '{second.name}' crosses."
    return f"Say which seams '{second.name}' crosses, and leave '{first.name}' out."

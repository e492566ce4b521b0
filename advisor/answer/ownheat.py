"""Who is told to be pressed by itself, with the iron of the step that does it in the order.

Told without its degrees nobody can do it, and told without a step nobody knows when.
"""

from __future__ import annotations

from itertools import groupby
from typing import TYPE_CHECKING

from msgspec.structs import replace

from advisor.answer.wording import setting_text
from advisor.claims.workarounds import ALONE, LINING, PART, Instruction, OwnIron

if TYPE_CHECKING:
    from advisor.claims.judgement import Advice
    from advisor.order.work import Work
    from advisor.units import System

OP = "press-alone"
FOLD = "fold-under"
"""What presses a channel while nothing runs in it yet."""


def with_irons(advice: Advice, work: Work) -> Advice:
    """The advice with the iron of each cloth that is pressed alone; none is told without a step."""
    irons = {
        task.needy: OwnIron(task.needy, iron.temperature_c, task.at_most, iron.moisture, task.glue)
        for task in work.tasks.values()
        if task.op == OP and (iron := task.step.iron) is not None and task.at_most is not None
    }
    empty = {
        task.place.name: OwnIron("", iron.temperature_c, task.at_most, iron.moisture)
        for task in work.tasks.values()
        if task.op == FOLD and (iron := task.step.iron) is not None
        if task.place is not None and task.at_most is not None
    }
    told = (_set(_channel(one, empty), irons) for one in advice.judgement.instructions)
    kept = tuple(one for one in told if one.needy or one.kind != ALONE)
    return replace(advice, judgement=replace(advice.judgement, instructions=kept))


def _channel(one: Instruction, empty: dict[str, OwnIron]) -> Instruction:
    """With the iron of a channel that is pressed empty, where what runs in it bears less."""
    found = {empty.get(place.name) for place in one.places}
    iron = found.pop() if one.kind == PART and len(found) == 1 else None
    hotter = iron is not None and one.most is not None and iron.most > one.most
    own = tuple(iron._replace(cloth=name) for name in sorted(one.needy)) if hotter and iron else ()
    return replace(one, irons=own) if own else one


def _set(one: Instruction, irons: dict[str, OwnIron]) -> Instruction:
    if one.kind not in (ALONE, LINING):
        return one
    found = tuple(irons[name] for name in sorted(one.needy & irons.keys()))
    needy = one.needy & irons.keys() if one.kind == ALONE else one.needy
    return replace(one, needy=needy, irons=found)


def own_heat(one: Instruction, units: System) -> str:
    """The irons of an instruction in a few words, with what comes before them; "" for none."""
    said = [
        (f"{setting_text(iron.start, iron.most, units)}, {iron.moisture}{iron.glue}", iron.cloth)
        for iron in one.irons
    ]
    grouped = groupby(sorted(said), key=lambda pair: pair[0])
    words = [f"{' and '.join(n for _, n in group)} {how}" for how, group in grouped]
    return f": {'; '.join(words)}" if words else ""

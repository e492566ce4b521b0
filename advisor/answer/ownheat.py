"""Who is told to be pressed by itself, with the iron of the step that does it in the order.

Told without its degrees nobody can do it, and told without a step nobody knows when.
"""

from __future__ import annotations

from itertools import groupby
from typing import TYPE_CHECKING

from msgspec.structs import replace

from advisor.answer.wording import setting_text
from advisor.claims.workarounds import ALONE, LINING, Instruction, OwnIron

if TYPE_CHECKING:
    from advisor.claims.judgement import Advice
    from advisor.order.work import Work
    from advisor.units import System

OP = "press-alone"


def with_irons(advice: Advice, work: Work) -> Advice:
    """The advice with the iron of each cloth that is pressed alone; none is told without a step."""
    irons = {
        task.needy: OwnIron(task.needy, iron.temperature_c, task.at_most, iron.moisture, task.glue)
        for task in work.tasks.values()
        if task.op == OP and (iron := task.step.iron) is not None and task.at_most is not None
    }
    told = (_set(one, irons) for one in advice.judgement.instructions)
    kept = tuple(one for one in told if one.needy or one.kind != ALONE)
    return replace(advice, judgement=replace(advice.judgement, instructions=kept))


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

"""What a step of the order warns of: a needle that may break, cloths that the heat would harm.

The words of a needle and of an iron are the sheet's own, so that both papers say the same.
"""

from __future__ import annotations

from collections.abc import Collection
from typing import TYPE_CHECKING

from advisor.answer.model.order import ToldKeepOff
from advisor.answer.seamwords import warnings
from advisor.answer.wording import degrees, setting_text
from advisor.construction.seamwork import seamwork
from advisor.decide.usedup import unnamed_buttons
from advisor.knowledge.ordering import SEWN
from advisor.units import System

if TYPE_CHECKING:
    from advisor.claims.judgement import Advice
    from advisor.knowledge.model import Knowledge
    from advisor.order.tasks import Task
    from advisor.order.work import Work

EYE = "Eye:"
"""How the sheet begins what may break into somebody's face."""
HOT, DAMP = "at {heat}, which is too hot for {it}", "{damp}, and water leaves rings on {it}"
MOIST = {"damp cloth": "under a damp cloth"}


def heat_words(task: Task, units: System) -> str:
    """Where the iron starts, up to what and which mark that is, as the sheet says it."""
    iron, most = task.step.iron, task.at_most
    if iron is None:
        return ""
    if most is None or (task.op == "fuse" and most < iron.temperature_c):
        # glue wants its heat; alone on its piece it may be hotter than the seam
        return degrees(iron.temperature_c, units)
    return setting_text(iron.temperature_c, most, units)


def needle_notes(work: Work, advice: Advice, knowledge: Knowledge, units: System) -> dict[str, str]:
    """For each step that sews with a needle its stack may break: the sheet's warning."""
    notes = {}
    for name, task in work.tasks.items():
        if task.place is None or task.op not in SEWN or task.step.machine is None:
            continue
        found = seamwork(task.place.seam, advice.judgement, knowledge)
        if found.fine_needle and found.fine_needle[0] == task.step.machine.size:
            told = [text for text in warnings(found, units) if text.startswith(EYE)]
            notes[name] = " ".join(told)
    return notes


def button_notes(work: Work, advice: Advice, knowledge: Knowledge) -> dict[str, str]:
    """For the last step of buttonholes whose buttons no place names: to sew them on."""
    wanted = unnamed_buttons(advice.judgement.garment, work.methods, knowledge)
    last = {
        task.place.name: name
        for name in work.order
        if (task := work.tasks[name]).place is not None and task.place.name in wanted
    }
    return dict.fromkeys(last.values(), "No buttons are named: sew one on through each of them.")


def keep_off_notes(work: Work) -> dict[str, str]:
    """For each pressing near something tender that is in by then: what to do about it."""
    notes = {}
    for name in dict.fromkeys(name for name, _ in (*work.hot_near, *work.damp_near)):
        tender = dict(work.hot_near).get(name, frozenset()) | dict(work.damp_near).get(name, set())
        if name not in work.done:
            notes[name] = f"Near it {_listed(tuple(sorted(tender)))}: {shield(work, name, tender)}."
    return notes


def shield(work: Work, step: str, tender: Collection[str]) -> str:
    """How to keep heat and steam off what is in by then; what lies inside cannot be covered."""
    loose = _loose_bones(work, step) & set(tender)
    if loose:
        out = f"draw the {_listed(tuple(sorted(loose)))} back out of the open channels"
        rest = set(tender) - loose
        return f"{out}; {_listed(tuple(sorted(rest)))}: {shield(work, step, rest)}" if rest else out
    iron = work.tasks[step].step.iron
    steam = iron is not None and iron.moisture != "dry"
    if not set(tender) & work.faces:
        return "keep the iron to the seam" + (" and the steam short" if steam else "")
    dry = "cover it with a dry folded towel, keep the iron to the seam"
    if len(tender) > 1:
        dry = dry.replace("cover it", "cover them")
    return f"{dry}{' and the steam away' if steam else ''}"


def _loose_bones(work: Work, step: str) -> set[str]:
    """The bones whose channels are still open when a step is done."""
    at = work.order.index(step)
    later = (work.tasks[name] for name in work.order[at:])
    return {n for t in later if t.op == "close-bones" and t.place for n in t.place.notions}


def keep_off(work: Work, units: System) -> tuple[ToldKeepOff, ...]:
    """Pressings too hot or damp for a layer that is in by then, told once for all alike."""
    groups: dict[tuple[tuple[str, ...], str, str], list[str]] = {}
    for found, harm in ((work.hot_near, HOT), (work.damp_near, DAMP)):
        for name, tender in found:
            iron = work.tasks[name].step.iron
            if iron is not None and name not in work.done:
                names = tuple(sorted(tender))
                harms = harm.format(
                    heat=degrees(iron.temperature_c, units),
                    damp=MOIST.get(iron.moisture, "with steam"),
                    it="it" if len(names) == 1 else "them",
                )
                groups.setdefault((names, harms, shield(work, name, tender)), []).append(name)
    rows = []
    for (names, harms, how), steps in groups.items():
        tasks = [work.tasks[name] for name in steps]
        where = dict.fromkeys(task.place.name for task in tasks if task.place)
        heat = max(task.step.iron.temperature_c for task in tasks if task.step.iron)
        text = (
            f"{_listed(names)} {'is' if len(names) == 1 else 'are'} in by the time that "
            f"{_listed(tuple(where))} {'is' if len(where) == 1 else 'are'} pressed {harms}: {how}."
        )
        rows.append(ToldKeepOff(tuple(steps), names, heat, text))
    return tuple(rows)


def _listed(names: tuple[str, ...]) -> str:
    return names[0] if len(names) == 1 else f"{', '.join(names[:-1])} and {names[-1]}"

"""What a step of the order warns of: a needle that may break, cloths that the heat would harm.

The words of a needle and of an iron are the sheet's own, so that both papers say the same.
"""

from __future__ import annotations

from collections.abc import Collection, Iterable, Iterator, Mapping
from typing import TYPE_CHECKING

from advisor.answer.core import FIRST
from advisor.answer.model.order import ToldKeepOff
from advisor.answer.model.told import ToldInstruction, ToldTask
from advisor.answer.seamwords import warnings
from advisor.answer.wording import degrees, setting_text
from advisor.construction.seamwork import seamwork
from advisor.decide.usedup import unnamed_buttons
from advisor.knowledge.ordering import SEWN
from advisor.order.kinds import crosses
from advisor.order.runsdown import ends_in
from advisor.units import System

if TYPE_CHECKING:
    from advisor.answer.teller import Teller
    from advisor.claims.judgement import Advice
    from advisor.knowledge.model import Knowledge
    from advisor.order.tasks import Task
    from advisor.order.work import Work

YOKE = "yoke"
"""A seam that is sewn before a shoulder, and may end at the armholes."""
EYE = "Eye:"
"""How the sheet begins what may break into somebody's face."""
HOT, DAMP = "at {heat}, too hot for {it}", "{damp}, and water leaves rings on {it}"
MOIST = {"damp cloth": "under a damp cloth"}


def heat_words(task: Task, units: System) -> str:
    """Where the iron starts, up to what and which mark that is, as the sheet says it."""
    iron, most = task.step.iron, task.at_most
    if iron is None:
        return ""
    if most is None:
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


def keep_off_notes(work: Work, units: System) -> dict[str, str]:
    """For each pressing near something tender that is in by then: what to do about it."""
    notes = {}
    for name in dict.fromkeys(name for name, _ in (*work.hot_near, *work.damp_near)):
        tender = dict(work.hot_near).get(name, frozenset()) | dict(work.damp_near).get(name, set())
        if name not in work.done:
            notes[name] = f"Near it {_names(tender)}: {shield(work, name, tender, units)}."
    for name, tender in work.capped:
        if name not in work.done and name not in notes:
            notes[name] = f"Near it {_names(tender)}: no hotter than told here."
    for name, low in work.hung_low:
        if name not in work.done:
            text = f"Behind it hangs {_names(low)}: {lifted(work, name, low, units)}."
            notes[name] = " ".join([*([notes[name]] if name in notes else []), text])
    return notes


def lifted(work: Work, step: str, low: Collection[str], units: System) -> str:
    """What is done with what hangs behind a hem while that is pressed."""
    task, it = work.tasks[step], "it" if len(low) == 1 else "them"
    most = max(task.at_most or 0.0, task.step.iron.temperature_c if task.step.iron else 0.0)
    return f"lift {it} well clear of the iron, for {degrees(most, units)} would spoil {it}"


def shield(work: Work, step: str, tender: Collection[str], units: System) -> str:
    """How to keep heat and steam off what is in by then; what lies inside cannot be covered.

    Nor can what ends in the seam itself: there the iron is set as that bears it.
    """
    for apart, how in _dealt_with(work, step, set(tender), units):
        rest = set(tender) - apart
        return f"{how}; {_names(rest)}: {shield(work, step, rest, units)}" if rest else how
    iron = work.tasks[step].step.iron
    steam = iron is not None and iron.moisture != "dry"
    if not set(tender) & work.faces:
        return "keep the iron to the seam" + (" and the steam short" if steam else "")
    dry = "cover it with a dry folded towel, keep the iron to the seam"
    if len(tender) > 1:
        dry = dry.replace("cover it", "cover them")
    return f"{dry}{' and the steam away' if steam else ''}"


def _ending_in(work: Work, step: str, tender: Collection[str]) -> dict[str, float]:
    """The tender cloths whose seams end in the one that is pressed, with what those bear, °C."""
    place, found = work.tasks[step].place, dict[str, float]()
    for task in work.tasks.values():
        other, most = task.place, task.at_most
        if task.op != "press" or place is None or other is None or most is None:
            continue
        near = (place.name, other.name) not in work.apart
        said = other.name in (place.crosses or ())
        ends = other.role.id != YOKE and (crosses(place, other) or ends_in(place, other))
        for name in set(other.seam.cloths()) & set(tender) if said or (near and ends) else ():
            found[name] = min(most, found.get(name, most))
    return found


def _dealt_with(
    work: Work, step: str, tender: set[str], units: System
) -> Iterator[tuple[set[str], str]]:
    """What of the tender is neither covered nor only kept beside the iron, and what is done."""
    if loose := _loose_bones(work, step) & tender:
        yield loose, f"draw the {_names(loose)} back out of the open channels"
    if ending := _ending_in(work, step, tender):
        who = "" if set(ending) == tender else f"{_names(ending)}: "
        yield set(ending), f"{who}{_as_it_bears(ending, units)}"


def _as_it_bears(ending: Mapping[str, float], units: System) -> str:
    """How a seam is pressed where something tender ends in it."""
    they = "it ends" if len(ending) == 1 else "they end"
    most = degrees(min(ending.values()), units)
    return f"where {they} in the seam go no hotter than {most}, and dry"


def _loose_bones(work: Work, step: str) -> set[str]:
    """The bones whose channels are still open when a step is done."""
    at = work.order.index(step)
    later = (work.tasks[name] for name in work.order[at:])
    return {n for t in later if t.op == "close-bones" and t.place for n in t.place.notions}


def keep_off(work: Work, units: System) -> tuple[ToldKeepOff, ...]:
    """Pressings too hot or damp for a layer that is in by then, told once for all alike."""
    groups: dict[tuple[tuple[str, ...], str, str], list[str]] = {}
    for (step, names), harms in _harms(work, units).items():
        how = shield(work, step, frozenset(names), units)
        groups.setdefault((names, ", and ".join(harms), how), []).append(step)
    rows = []
    for (names, harm, how), steps in groups.items():
        tasks = [work.tasks[name] for name in steps]
        where = dict.fromkeys(task.place.name for task in tasks if task.place)
        heat = max(task.step.iron.temperature_c for task in tasks if task.step.iron)
        text = (
            f"{_listed(names)} {'is' if len(names) == 1 else 'are'} in when "
            f"{_listed(tuple(where))} {'is' if len(where) == 1 else 'are'} pressed {harm}: {how}."
        )
        rows.append(ToldKeepOff(tuple(steps), names, heat, text))
    return (*rows, *_capped(work, units))


def _capped(work: Work, units: System) -> Iterator[ToldKeepOff]:
    """Pressings that are kept below what their own place bears, told once for all alike."""
    groups: dict[tuple[tuple[str, ...], float], list[str]] = {}
    for step, tender in work.capped:
        most = work.tasks[step].at_most
        if most is not None and step not in work.done:
            groups.setdefault((tuple(sorted(tender)), most), []).append(step)
    for (names, most), steps in groups.items():
        tasks = [work.tasks[name] for name in steps]
        where = tuple(dict.fromkeys(task.place.name for task in tasks if task.place))
        text = (
            f"{_listed(names)} {'is' if len(names) == 1 else 'are'} in when "
            f"{_listed(where)} {'is' if len(where) == 1 else 'are'} pressed: then no hotter than "
            f"{degrees(most, units)} there."
        )
        yield ToldKeepOff(tuple(steps), names, most, text)


def _harms(work: Work, units: System) -> dict[tuple[str, tuple[str, ...]], list[str]]:
    """What each pressing that is left does to the layers that are in by then."""
    found: dict[tuple[str, tuple[str, ...]], list[str]] = {}
    for near, harm in ((work.hot_near, HOT), (work.damp_near, DAMP)):
        for step, tender in near:
            iron = work.tasks[step].step.iron
            if iron is not None and step not in work.done:
                names = tuple(sorted(tender))
                text = harm.format(
                    heat=degrees(work.tasks[step].hottest, units),
                    damp=MOIST.get(iron.moisture, "with steam"),
                    it="it" if len(names) == 1 else "them",
                )
                found.setdefault((step, names), []).append(text)
    return found


def told_near(work: Work, teller: Teller) -> tuple[ToldInstruction, ...]:
    """The same as what the iron's own view says of such pressings: both agree."""
    places = {name: task.place.name for name, task in work.tasks.items() if task.place}
    return tuple(
        ToldInstruction(
            kind="near",
            needy=(),
            tender=row.keep_off,
            places=tuple(dict.fromkeys(places[name] for name in row.steps if name in places)),
            text=row.text[:1].upper() + row.text[1:],
            sources=teller.cite(("common-practice",)),
        )
        for row in (*keep_off(work, teller.units), *_kept_clear(work, teller.units))
    )


def _kept_clear(work: Work, units: System) -> tuple[ToldKeepOff, ...]:
    """What hangs behind the hems that are left to press."""
    rows = []
    for step, low in work.hung_low:
        place = work.tasks[step].place
        if place is not None and step not in work.done:
            heat = work.tasks[step].at_most or 0.0
            names, how = tuple(sorted(low)), lifted(work, step, low, units)
            text = f"Behind {place.name} hangs {_names(low)} by the time that it is pressed: {how}."
            rows.append(ToldKeepOff((step,), names, heat, text))
    return tuple(rows)


def done_near(near: Iterable[ToldInstruction]) -> tuple[ToldTask, ...]:
    """The same for the sheet, at each of the places that are so pressed."""
    return tuple(
        ToldTask(place, "seam", one.text, "", certain=True, weight=FIRST, sources=one.sources)
        for one in near
        for place in one.places
    )


def _names(names: Iterable[str]) -> str:
    return _listed(tuple(sorted(names)))


def _listed(names: tuple[str, ...]) -> str:
    return names[0] if len(names) == 1 else f"{', '.join(names[:-1])} and {names[-1]}"

"""What the steps and the lines of a sheet are worked with and no setting calls for.

Sheet and order are read once they are told, so that nothing they ask for is missing on the list.
The words stand in `kit.yaml`; whatever lies in any workroom is told as that.
"""

from __future__ import annotations

import re
from collections.abc import Iterable, Iterator

from advisor.answer.model.answer import Answer
from advisor.answer.model.needed import ToldNeed
from advisor.decide.kit import state_of, state_of_needle
from advisor.knowledge.workshop import RoomThing
from advisor.order.overlocking import NEATENED, OVERLOCKER
from advisor.order.work import Work
from advisor.project.garment import Garment

EVERYDAY = "everyday"
GROUP, NEEDLES = "tool", "needles"
ADVISED = "where a line of the sheet advises it"
ASKED = re.compile(r"(?<!\bno )(?<!\bnever )(?<!\bnor )\b")
"""Where a word begins that asks for something, as after "no" it does not."""


def with_workroom(
    found: Answer, work: Work | None, garment: Garment, things: Iterable[RoomThing]
) -> tuple[ToldNeed, ...]:
    """The list of an answer, and every other thing that its sentences ask for."""
    listed = found.kit or ()
    steps, lines = (" \n".join(text).casefold() for text in (_steps(found, work), _lines(found)))
    rows: list[ToldNeed] = []
    for thing in things:
        always = _asks(thing, steps)
        if (always or _asks(thing, lines)) and not _stands(thing, [*listed, *rows]):
            rows.append(_need(thing, garment, () if always or thing.everyday else (ADVISED,)))
    return (*listed, *_needles(listed, work, garment), *rows)


def _needles(listed: Iterable[ToldNeed], work: Work | None, garment: Garment) -> list[ToldNeed]:
    """Needles that only the order of work sets, as for rows that are drawn up."""
    wanted: dict[str, dict[str, None]] = {}
    for task in work.tasks.values() if work is not None else ():
        machine = task.step.machine
        if machine is not None and machine.point and task.place is not None:
            own = machine.machine == OVERLOCKER and machine.stitch == NEATENED
            kind = machine.machine if own else machine.point
            item = f"{kind} {machine.size}"
            wanted.setdefault(item, {})[task.place.name] = None
    known = {row.item for row in listed if row.group == NEEDLES}
    return [
        _row(NEEDLES, item, "needle.size", tuple(places), state_of_needle(garment, item))
        for item, places in sorted(wanted.items())
        if item not in known
    ]


def _steps(found: Answer, work: Work | None) -> Iterator[str]:
    """What is done in any case: settings, tests on scraps, the steps of the order."""
    yield from (v.pick for v in found.verdicts if isinstance(v.pick, str))
    yield from (each.text for each in found.instructions)
    yield from (each.text for each in found.tests)
    if found.work is not None:
        yield from (each.text for each in found.work.keep_off)
    if work is not None:
        for task in work.tasks.values():
            yield task.step.does
            yield task.step.iron.surface if task.step.iron is not None else ""


def _lines(found: Answer) -> Iterator[str]:
    """What the sheet advises besides, some of it only where all is printed."""
    yield from (each.text for each in found.advice)
    yield from (each.text for each in found.cautions)


def _asks(thing: RoomThing, text: str) -> bool:
    return any(ASKED.match(text, at) for word in thing.words for at in _at(word.casefold(), text))


def _at(word: str, text: str) -> Iterator[int]:
    """Every place of a word in a text."""
    at = text.find(word)
    while at >= 0:
        yield at
        at = text.find(word, at + 1)


def _stands(thing: RoomThing, listed: Iterable[ToldNeed]) -> bool:
    """Whether a row names it already, as fine silk pins are pins."""
    return any(thing.name in row.item.casefold() for row in listed)


def _need(thing: RoomThing, garment: Garment, places: tuple[str, ...]) -> ToldNeed:
    state = EVERYDAY if thing.everyday else state_of(garment, "tools", thing.name)
    return _row(GROUP, thing.name, "", places, state)


def _row(group: str, item: str, aspect: str, places: tuple[str, ...], state: str) -> ToldNeed:
    """A row of the list that is neither measured nor counted."""
    return ToldNeed(
        group, item, aspect, places, state, None, None, (), 0.0, "", None, None, (), None, (), ()
    )

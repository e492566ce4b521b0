"""What the maker wants of her order, laid over the tasks: steps added and dropped, ties and pins.

Names that are no step are not silently passed over: each is a remark that she reads.
"""

from __future__ import annotations

from collections.abc import Sequence

from msgspec import Struct, field
from msgspec.structs import replace

from advisor.knowledge.ordering import PrecedenceRule
from advisor.order.graph import CycleError, build
from advisor.order.sittings import Couple
from advisor.order.steps import Precedence, Step
from advisor.order.tasks import Task
from advisor.project.wished import Pinned, Wishes
from advisor.project.wishes import unknown_step

YOU_SAID = "You want it so"
OWN_RANK = 600
"""Where a step of the maker's own stands when nothing ties it: after the shell, before the hem."""


class PinAnswer(Struct, frozen=True):
    """A pin and what stands against it; nothing where it is honoured."""

    pin: Pinned
    forbidden_by: tuple[Precedence, ...] = ()
    remark: str = ""


class Wished(Struct):
    """The tasks and precedences after the maker's wishes."""

    tasks: list[Task]
    precedences: list[Precedence] = field(default_factory=list)
    couples: list[Couple] = field(default_factory=list)
    remarks: list[str] = field(default_factory=list)


def apply_wishes(tasks: list[Task], precedences: list[Precedence], wishes: Wishes) -> Wished:
    """The tasks without those dropped, with those added, and all that the maker tied."""
    known = [task.id for task in tasks]
    result = Wished(list(tasks))
    dropped = {name for name in wishes.drop if _known(name, known, result.remarks)}
    result.tasks = [task for task in tasks if task.id not in dropped]
    result.precedences = _bridged(precedences, dropped)
    for added in wishes.add:
        if added.step in known or not added.step:
            result.remarks.append(f"There is a step called '{added.step}' already.")
            continue
        does = f"{added.step[:1].upper()}{added.step[1:]}."
        step = Step(added.step, does, minutes=added.minutes, rank=OWN_RANK)
        result.tasks.append(Task(step, None, cloths=added.on))
        known.append(added.step)
    alive = [task.id for task in result.tasks]
    pairs = [(a, row.step) for row in wishes.add for a in row.after]
    pairs += [(row.step, b) for row in wishes.add for b in row.before]
    pairs += [*wishes.after, *wishes.tie]
    for first, second in pairs:
        known_both = [_known(name, alive, result.remarks) for name in (first, second)]
        if all(known_both):
            result.precedences.append(Precedence(first, second, f"{YOU_SAID}."))
    result.couples = [
        Couple(a, b, f"{YOU_SAID}.") for a, b in wishes.tie if a in alive and b in alive
    ]
    result.remarks = list(dict.fromkeys(result.remarks))
    _default_places(result)
    return result


TABLES = frozenset({"crossed", "related", "custom", "fed"})
"""How two places stand to each other by custom only; what heat or cloth forbids is none of it."""


def yielding(
    tasks: list[Task],
    weights: dict[Precedence, int],
    rules: Sequence[PrecedenceRule],
    wishes: Wishes,
) -> list[Precedence]:
    """The precedences but those of custom that the maker's own word on two places turns round."""
    place = {task.id: task.place.name for task in tasks if task.place is not None}
    said = {
        (place[first], place[second])
        for first, second in (*wishes.after, *wishes.tie)
        if first in place and second in place and place[first] != place[second]
    }
    return [
        item
        for item, weight in weights.items()
        if weight < 0
        or rules[weight].where not in TABLES
        or (place.get(item.after, ""), place.get(item.before, "")) not in said
    ]


def _default_places(result: Wished) -> None:
    """A step of her own with nothing after it still comes before the last press."""
    ids = {task.id for task in result.tasks}
    for task in result.tasks:
        if task.operation is None:
            for first, second in (("test", task.id), (task.id, "last press")):
                if first in ids and second in ids:
                    why = "Your own step is part of the garment."
                    result.precedences.append(Precedence(first, second, why, ("derived",), "may"))


def _bridged(items: list[Precedence], dropped: set[str]) -> list[Precedence]:
    """The precedences without the dropped steps; what had to come before them still does."""
    kept = [p for p in items if p.before not in dropped and p.after not in dropped]
    for name in sorted(dropped):
        before = [p for p in items if p.after == name and p.before not in dropped]
        after = [p for p in items if p.before == name and p.after not in dropped]
        kept += [replace(b, before=a.before) for a in before for b in after if a.before != b.after]
    return kept


def _known(name: str, known: list[str], remarks: list[str]) -> bool:
    if name in known:
        return True
    remarks.append(unknown_step(name, known))
    return False


def honour_pins(
    tasks: list[Task], precedences: list[Precedence], pins: tuple[Pinned, ...], plain: list[str]
) -> tuple[list[Precedence], list[PinAnswer]]:
    """The precedences with every pin that can be had, and an answer for each pin."""
    steps = [task.step for task in tasks]
    ids = [step.id for step in steps]
    held = list(precedences)
    answers = []
    for pin in pins:
        missing = [n for n in (pin.step, pin.after, pin.before) if n is not None and n not in ids]
        if missing:
            answers.append(PinAnswer(pin, (), unknown_step(missing[0], ids)))
            continue
        wanted = _pin_precedences(pin, plain)
        try:
            build(steps, [*held, *wanted])
        except CycleError as error:
            against = tuple(item for item in error.cycle if item not in wanted)
            answers.append(PinAnswer(pin, against))
            continue
        held += wanted
        answers.append(PinAnswer(pin))
    return held, answers


def _pin_precedences(pin: Pinned, order: list[str]) -> list[Precedence]:
    why = f"{YOU_SAID}: a pin."
    found = []
    after, before = pin.after, pin.before
    if pin.at is not None:
        rest = [name for name in order if name != pin.step]
        at = min(pin.at - 1, len(rest))
        after = after or (rest[at - 1] if at > 0 else None)
        before = before or (rest[at] if at < len(rest) else None)
    if after is not None and after != pin.step:
        found.append(Precedence(after, pin.step, why))
    if before is not None and before != pin.step:
        found.append(Precedence(pin.step, before, why))
    return found

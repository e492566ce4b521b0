"""Why a step stands where it stands: what holds it, what moving it costs, what became of pins."""

from __future__ import annotations

from dataclasses import dataclass, field

from advisor.answer.model.answer import SCHEMA
from advisor.knowledge.model import Knowledge
from advisor.order.explain import Pin, moved
from advisor.order.graph import build
from advisor.order.steps import Precedence
from advisor.order.work import QUICK, Work
from advisor.records import OPTIONAL

_USUAL = frozenset({"shrink", "test", "cut", "mark", "stay-stitch"})


@dataclass(frozen=True, slots=True)
class ToldHold:
    """A precedence that holds the step; `cited` are the works that it rests on."""

    before: str
    after: str
    why: str
    strength: str | None = field(default=None, metadata=OPTIONAL)
    sources: tuple[str, ...] | None = field(default=None, metadata=OPTIONAL)
    cited: tuple[str, ...] | None = field(default=None, metadata=OPTIONAL)


@dataclass(frozen=True, slots=True)
class ToldFollowing:
    """Steps that it follows because of others, for one reason."""

    steps: tuple[str, ...]
    why: str


@dataclass(frozen=True, slots=True)
class ToldMove:
    """The step elsewhere, before or after another: the minutes that it costs, or what forbids."""

    what: str
    before: str | None = field(default=None, metadata=OPTIONAL)
    after: str | None = field(default=None, metadata=OPTIONAL)
    possible: bool = True
    extra_min: float | None = None
    forbidden_by: tuple[ToldHold, ...] = ()


@dataclass(frozen=True, slots=True)
class ToldStepPin:
    """What became of the place that the maker gave it."""

    honoured: bool
    remark: str
    forbidden_by: tuple[ToldHold, ...]


@dataclass(frozen=True, slots=True)
class StepWhy:
    """All that is to be said about the place of a step."""

    schema: str
    garment: str
    step: str
    does: str
    place: int
    of: int
    after: tuple[ToldHold, ...]
    before: tuple[ToldHold, ...]
    and_after: tuple[ToldFollowing, ...]
    forced_before: tuple[str, ...]
    forced_after: tuple[str, ...]
    given_up: tuple[ToldHold, ...]
    moves: tuple[ToldMove, ...]
    pins: tuple[ToldStepPin, ...]


def why_step(garment: str, work: Work, step: str, knowledge: Knowledge) -> StepWhy:
    """Why a step of a garment's order of work stands where it stands."""

    def holds(links: list[Precedence]) -> tuple[ToldHold, ...]:
        return tuple(
            ToldHold(p.before, p.after, p.why, p.strength, p.sources, _cited(p, knowledge))
            for p in links
        )

    at = {name: number for number, name in enumerate(work.order)}
    after = [p for items in work.reasons.values() for p in items if p.before == step]
    pins = [asked for asked in work.pins if asked.pin.step == step]
    return StepWhy(
        schema=SCHEMA,
        garment=garment,
        step=step,
        does=work.tasks[step].step.does,
        place=work.numbers[step],
        of=len(work.order),
        after=holds([*work.reasons.get(step, ())]),
        before=holds(sorted(after, key=lambda p: at[p.after])),
        and_after=_following(work, step),
        forced_before=work.graph.forced_before(step),
        forced_after=work.graph.forced_after(step),
        given_up=holds([p for p in work.given_up if step in (p.before, p.after)]),
        moves=() if step in work.done else _moves(work, step),
        pins=tuple(
            ToldStepPin(
                not pin.forbidden_by and not pin.remark, pin.remark, holds([*pin.forbidden_by])
            )
            for pin in pins
        ),
    )


def _following(work: Work, step: str) -> tuple[ToldFollowing, ...]:
    """Direct reasons that follow from others as well, those of the same words together."""
    told = work.reasons.get(step, ())
    groups: dict[str, list[str]] = {}
    for item in work.graph.precedences:
        if item.after == step and item not in told and work.tasks[item.before].op not in _USUAL:
            groups.setdefault(item.why, []).append(item.before)
    rows = ((tuple(dict.fromkeys(names)), why) for why, names in groups.items())
    return tuple(ToldFollowing(*row) for row in rows)


def _cited(item: Precedence, knowledge: Knowledge) -> tuple[str, ...]:
    cited = []
    for text in item.sources:
        id_, _, place = text.partition(" ")
        source = knowledge.sources.get(id_)
        if source is not None:
            cited.append(f"{source.citation}{', ' + place if place else ''} ({source.kind})")
    return tuple(cited)


def _moves(work: Work, step: str) -> tuple[ToldMove, ...]:
    """The step one place earlier and later, and as early and as late as anything allows."""
    left = list(work.left())
    at = left.index(step)
    earlier = [n for n in left[:at] if n not in work.graph.forced_before(step)]
    later = [n for n in left[at + 1 :] if n not in work.graph.forced_after(step)]
    wanted: dict[Pin, str] = {}
    if at:
        wanted[Pin(step, before=left[at - 1])] = "one place earlier"
    if at + 1 < len(left):
        wanted[Pin(step, after=left[at + 1])] = "one place later"
    if earlier:
        wanted.setdefault(Pin(step, before=earlier[0]), "as early as it can stand")
    if later:
        wanted.setdefault(Pin(step, after=later[-1]), "as late as it can stand")
    return tuple(_move(work, pin, what) for pin, what in wanted.items())


def _move(work: Work, pin: Pin, what: str) -> ToldMove:
    alive = [
        p for p in work.graph.precedences if p.before not in work.done and p.after not in work.done
    ]
    graph = build([work.tasks[name].step for name in work.left()], alive)
    found = moved(graph, work.plan, pin, work.setting, QUICK)
    links = tuple(ToldHold(p.before, p.after, p.why) for p in found.forbidden_by)
    if found.plan is None:
        return ToldMove(what, pin.before, pin.after, possible=False, forbidden_by=links)
    return ToldMove(what, pin.before, pin.after, extra_min=round(found.extra or 0.0, 2))
